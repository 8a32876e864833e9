"""`python -m service` is the command line."""

from service.cli import main

raise SystemExit(main())

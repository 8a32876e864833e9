"""A battery's label typed as it stands."""

"""Makes messages of which the topic and the facts are known: templates, synonyms, notations, slips and noise."""

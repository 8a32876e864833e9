"""Renderings of a Reply: text, HTML, mail. They know answers only, never topics or calculators."""

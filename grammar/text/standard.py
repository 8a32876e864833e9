"""The sizes that the trade makes: volts of a battery or a boat, cross-sections of metric cable."""

NOMINAL = frozenset({6.0, 12.0, 24.0, 36.0, 48.0})  # volts
METRIC_SIZES = frozenset(  # mm2, the series of IEC 60228
    {0.75, 1.0, 1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 50.0, 70.0, 95.0, 120.0, 150.0, 185.0, 240.0}
)

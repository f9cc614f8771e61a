"""The stock ledger, stock.csv: what was made, sold, returned and counted. What is on hand is worked out.

    bytes ─▶ Ledger (events in order, each with its line) ─▶ what is on hand ─▶ what to have at the next market

Lines are only ever added at the foot; nothing here changes or sorts what stands above.
"""

// What the examples are called.
export const DEMOS = {
  lighthouse: 'Skerry Light',
  harbour: 'Skerry Harbour',
  buoy: 'Anchor Buoy',
} as const;

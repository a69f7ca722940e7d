/** Dated observations of american persimmon: see `../../phenology/observedRows.ts` for the columns. */
export const americanPersimmonRows = `
  P157 columbia main mid full-bloom 05-25 06-15 read s35
  P158 columbia main mid first-ripe 09-10 09-30 read s35
  P164 urbana main early first-ripe 09-05 09-20 memory s36
  P165 urbana main mid first-ripe 09-20 10-05 memory s36
  P169 frankfort main early first-ripe 08-28 09-12 memory s37
  P170 frankfort main mid first-ripe 09-15 10-01 memory s37
  P171 beltsville main mid first-ripe 09-20 10-05 memory s38
  P172 beltsville main mid full-bloom 05-22 06-05 memory s38
  P173 kyiv main mid full-bloom 06-08 06-22 memory s39
  P174 kyiv main mid first-ripe 09-28 10-15 memory s39
  P175 austin main mid first-ripe 08-25 09-15 memory s40
  P178 florence main mid first-ripe 09-28 10-15 memory s31
`;

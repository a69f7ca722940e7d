/** Dated observations of mulberry: see `../../phenology/observedRows.ts` for the columns. */
export const mulberryRows = `
  P239 batman main mid budbreak 03-05 03-15 read s53
  P240 batman main mid full-bloom 04-13 04-30 read s53
  P241 batman main early first-ripe 04-25 05-05 worked s53
  P242 batman main mid first-ripe 05-13 05-18 worked s53
  P251 suwon main mid full-bloom 05-15 05-15 read s54
  P252 suwon main mid first-ripe 06-10 06-15 read s54
  P256 wisley main late first-ripe 08-01 08-20 memory s55
  P257 wisley any late leafout 05-10 05-25 memory s55
  P260 austin main mid first-ripe 05-01 05-15 memory s40
  P261 columbia main mid first-ripe 06-05 06-20 memory s56
  P262 ames main mid first-ripe 06-12 06-28 memory s57
  P265 elche main mid first-ripe 05-08 05-22 memory s58
  P266 elche main late first-ripe 06-05 06-20 memory s58
  P284 kyiv main mid first-ripe 06-12 06-26 memory s39
  P285 phoenix main mid first-ripe 04-18 05-05 memory s59
`;

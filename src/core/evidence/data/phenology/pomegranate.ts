/** Dated observations of pomegranate: see `../../phenology/observedRows.ts` for the columns. */
export const pomegranateRows = `
  P288 newe-ya-ar main early first-ripe 08-14 08-25 read s60
  P289 newe-ya-ar main late first-ripe 09-27 10-08 worked s60
  P290 newe-ya-ar main late first-ripe 10-01 10-10 read s61
  P295 newe-ya-ar main early first-ripe 08-25 09-05 memory s62
  P296 newe-ya-ar main early first-ripe 08-08 08-20 memory s62
  P297 newe-ya-ar main mid first-ripe 09-05 09-18 memory s62
  P298 newe-ya-ar main any full-bloom 05-01 05-18 memory s62
  P299 parlier main late full-bloom 05-12 05-25 memory s63
  P300 parlier main late first-ripe 10-01 10-12 memory s63
  P301 parlier main early first-ripe 08-25 09-08 memory s63
  P302 parlier main early first-ripe 08-15 08-30 memory s63
  P304 riverside main late first-ripe 10-05 10-22 memory s63
  P305 phoenix main late first-ripe 09-15 10-05 memory s52
  P306 tifton main mid first-ripe 09-15 10-01 memory s64
  P307 college-station main mid first-ripe 09-15 10-05 memory s65
  P311 antalya main late full-bloom 05-12 05-22 memory s66
  P312 antalya main late first-ripe 10-05 10-18 memory s66
  P315 sanliurfa main mid first-ripe 09-12 09-28 memory s67
  P316 sanliurfa main late first-ripe 10-05 10-18 memory s67
  P317 elche main mid budbreak 03-05 03-18 memory s68
  P318 elche main mid full-bloom 05-10 05-22 memory s68
  P326 chott-mariem main mid first-ripe 09-20 10-08 memory s69
  P336 porterville main mid first-ripe 03-08 03-25 memory s70
  P337 porterville main late first-ripe 03-25 04-12 memory s70
  P338 porterville main early first-ripe 02-10 02-25 memory s70
  P339 porterville main mid full-bloom 10-05 10-18 memory s70
  P341 zaozhuang main mid budbreak 03-28 04-06 memory s71
  P342 zaozhuang main mid full-bloom 05-25 06-08 memory s71
  P343 zaozhuang main mid first-ripe 09-15 09-26 memory s71
  P345 huaiyuan main mid first-ripe 09-15 09-28 memory s71
  P347 huili main mid first-ripe 08-01 08-15 memory s71
  P348 huili main mid full-bloom 04-05 05-05 memory s71
  P349 hotan main mid first-ripe 09-20 10-03 memory s71
`;

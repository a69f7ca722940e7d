/** Dated observations of fig: see `../../phenology/observedRows.ts` for the columns. */
export const figRows = `
  P001 baton-rouge main early first-ripe 07-01 07-08 read s1
  P003 erbeyli main late leafout 03-21 04-05 read s2
  P005 erbeyli main late first-ripe 07-22 08-07 read s2
  P008 ouled-frej breba early first-ripe 05-18 05-23 read s3
  P010 bouhouda breba mid first-ripe 05-28 06-03 read s3
  P011 ouled-frej main early first-ripe 07-08 07-14 read s3
  P015 reggio-calabria breba mid first-ripe 06-25 07-05 worked s4
  P016 reggio-calabria breba early first-ripe 06-08 06-12 read s4
  P022 parlier breba mid first-ripe 06-20 06-30 copy s5
  P023 parlier main late first-ripe 08-01 08-10 copy s5
  P024 parlier main mid first-ripe 07-10 07-25 copy s5
  P027 college-station main early first-ripe 06-15 06-25 memory s6
  P028 college-station main mid first-ripe 06-22 07-05 memory s6
  P029 college-station breba mid first-ripe 05-10 05-25 memory s6
  P035 beltsville main mid first-ripe 08-15 09-01 memory s7
  P036 new-brunswick main mid first-ripe 08-20 09-05 memory s8
  P039 parlier main late first-ripe 08-01 08-15 memory s9
  P040 parlier main late first-ripe 08-10 08-25 memory s10
  P042 riverside breba mid first-ripe 06-15 06-30 memory s9
  P043 riverside main late first-ripe 08-05 08-20 memory s9
  P044 wisley breba mid first-ripe 08-15 09-05 memory s11
  P045 sollies-pont main late first-ripe 08-15 08-25 memory s12
  P047 guadajira main mid first-ripe 07-25 08-10 memory s13
  P048 guadajira breba early first-ripe 06-10 06-20 memory s13
  P049 elche breba early first-ripe 05-28 06-10 memory s13
  P050 elche main mid first-ripe 08-01 08-15 memory s13
  P053 chott-mariem breba early first-ripe 06-08 06-20 memory s14
  P054 chott-mariem main late first-ripe 08-01 08-15 memory s14
  P056 dortyol main late first-ripe 07-18 08-01 memory s15
  P071 parlier any mid leafout 03-20 04-01 memory s9
  P072 wisley any mid leafout 05-01 05-15 memory s11
  P073 camden main mid first-ripe 01-25 02-10 memory s16
  P074 camden breba mid first-ripe 11-25 12-10 memory s16
`;

/** Places of the dated observations: key, name, country, then degrees north, degrees east and height in m. */
export const placeRows = `
  akitsu | Akitsu, Higashihiroshima | Japan | 34.33 132.82 40
  aksu | Aksu | China | 41.17 80.23 1105
  alcalde | Alcalde | US | 36.09 -106.05 1735
  ames | Ames | US | 42.03 -93.65 300
  antalya | Antalya | Turkey | 36.9 30.68 40
  austin | Austin | US | 30.28 -97.73 165
  batman | Batman | Turkey | 37.88 41.12 550
  baton-rouge | Baton Rouge / Hammond | US | 30.45 -90.9 15
  beijing | Beijing (Fangshan / Daxing) | China | 39.75 116.3 40
  beltsville | Beltsville / College Park | US | 39.0 -76.9 45
  bouhouda | Bouhouda, Taounate | Morocco | 34.58 -4.55 600
  bucharest | Bucharest | Romania | 44.47 26.07 90
  camden | Camden / Sydney Basin | Australia | -34.05 150.7 70
  cangzhou | Cangzhou | China | 38.3 116.85 10
  chaoyang | Chaoyang | China | 41.55 120.45 170
  chico | Chico | US | 39.7 -121.82 60
  chott-mariem | Chott-Mariem, Sousse | Tunisia | 35.9 10.56 15
  college-station | College Station | US | 30.6 -96.35 95
  columbia | Columbia | US | 38.95 -92.33 230
  dortyol | Dortyol, Hatay | Turkey | 36.85 36.2 15
  elche | Elche / Orihuela | Spain | 38.1 -0.85 40
  erbeyli | Erbeyli, Incirliova, Aydin | Turkey | 37.86 27.72 50
  florence | Florence | Italy | 43.77 11.25 55
  frankfort | Frankfort | US | 38.12 -84.89 240
  fuping | Fuping | China | 34.75 109.18 470
  gifu | Gifu / Motosu | Japan | 35.43 136.7 20
  gimhae | Gimhae / Jinyeong | Korea | 35.3 128.73 20
  guadajira | Guadajira, Badajoz | Spain | 38.85 -6.68 185
  hotan | Hotan / Pishan | China | 37.13 79.93 1375
  huaiyuan | Huaiyuan | China | 32.95 117.2 25
  huili | Huili | China | 26.65 102.25 1790
  jiaxian | Jiaxian, Yulin | China | 38.02 110.49 800
  kherson | Kherson | Ukraine | 46.63 32.57 55
  kyiv | Kyiv | Ukraine | 50.41 30.56 190
  l-alcudia | L'Alcudia, Valencia | Spain | 39.2 -0.5 30
  liaocheng | Liaocheng | China | 36.45 115.98 35
  nambour | Nambour | Australia | -26.64 152.94 30
  new-brunswick | New Brunswick | US | 40.48 -74.45 25
  newe-ya-ar | Newe Ya'ar | Israel | 32.71 35.18 115
  ouled-frej | Ouled Frej, El Jadida | Morocco | 32.97 -8.22 110
  parlier | Parlier (Kearney) / Fresno | US | 36.6 -119.51 103
  phoenix | Phoenix | US | 33.43 -112.02 337
  porterville | Porterville / Wellington | South Africa | -33.02 18.98 110
  reggio-calabria | Reggio Calabria / Gioia Tauro | Italy | 38.35 15.95 60
  riverside | Riverside | US | 33.97 -117.34 315
  sanliurfa | Sanliurfa | Turkey | 37.15 38.79 520
  sollies-pont | Sollies-Pont | France | 43.19 6.04 80
  suwon | Suwon | Korea | 37.27 126.98 40
  tifton | Tifton | US | 31.47 -83.52 110
  urbana | Urbana | US | 40.08 -88.24 220
  wisley | Wisley / London | UK | 51.31 -0.47 35
  xinzheng | Xinzheng | China | 34.4 113.74 110
  yeongam | Yeongam | Korea | 34.8 126.7 20
  yiwu | Yiwu | China | 29.3 120.07 70
  zanhuang | Zanhuang | China | 37.66 114.38 180
  zaozhuang | Zaozhuang (Yicheng) | China | 34.77 117.59 80
  zhanhua | Zhanhua | China | 37.7 118.13 8
`;

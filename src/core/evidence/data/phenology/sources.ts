/** Publications of the dated observations, each with who published it. */
export const sourceRows = `
  s1 | LSU AgCenter: When Picking a Fig Variety, You Have Choices (M.H. Ferguson), 2022
  s2 | Fig Research Institute, Aydin: Phenological Observation Data and Tree Growth Characteristics Evaluation of Sarilop Fig Clones, Uluslararasi Anadolu Ziraat Muh. Bil. Derg. 4(2):42-53, 2022
  s3 | IAV Hassan II / INRA Maroc: Conduite technique et inventaire des varietes locales marocaines de figuier, Revue Marocaine des Sciences Agronomiques, part 4, 2019
  s4 | Mediterranea University Reggio Calabria: Performance evaluation of 40 fig accessions cultivated in Calabria: breba production, J. Saudi Soc. Agric. Sci. 22:98-106, 2023
  s5 | University of California: Figs (resources, UC Fruit & Nut Research and Information Center)
  s6 | Texas A&M AgriLife Extension: Home Fruit Production: Figs (Lyons & McEachern), 1996
  s7 | University of Maryland Extension HGIC: Growing Figs in Maryland, 2015
  s8 | Rutgers NJAES: Testing and growing figs in New Jersey (Frecon & Ward), 2012
  s9 | University of California: The Fig (Condit 1947); Fig varieties: a monograph, Hilgardia 23(11), 1955
  s10 | University of California: The California fig industry, Hort. Rev. 12:409-490, 1990
  s11 | Royal Horticultural Society: Figs: grow your own, 2015
  s12 | INAO: Cahier des charges AOP Figue de Sollies, 2006
  s13 | CICYTEX, Junta de Extremadura: Variedades de higuera (Lopez-Corrales et al.), 2011
  s14 | ISA Chott-Mariem: Fig genetic resources and breeding (Mars), Acta Hortic. 605:19-27, 2003
  s15 | Mustafa Kemal University: Present state and future of table fig growing in Turkey, Uludag Univ. Zir. Fak. Derg. 26(2):71-87, 2012
  s16 | NSW Agriculture: Fig growing in NSW, Agfact H3.1.19, 2004
  s17 | NIHHS, RDA: Sweet persimmon cultivar 'Chosi', Korean J. Breed. Sci. 51:424-427, 2019
  s18 | ISHS / RDA Korea: Breeding of sweet persimmon cultivar 'Chuyeon', Acta Hortic. 996:327-332, 2013
  s19 | Gyeongnam ARES Sweet Persimmon Research Institute: New sweet persimmon 'Olnuri', Korean Journal of Breeding Science
  s20 | NARO NIFTS: 'Hasshu', a new PVA persimmon cultivar, Bull. NARO Fruit Tree Tea Sci. 1:27-35, 2017
  s21 | NARO NIFTS: New persimmon cultivar 'Kanshu', Bull. NIFTS
  s22 | NARO NIFTS: New persimmon cultivar 'Kishu', Bull. NIFTS
  s23 | ISHS / NARO: Two astringent persimmon cultivars released by NARO NIFTS, Acta Hortic. 996, 2013
  s24 | Gifu Pref. Agric. Technology Center: Air temperature drop in summer and autumn and fruit skin coloring in 'Fuyu', Hort. Res. (Japan) 13:59-65, 2014
  s25 | Mustafa Kemal University / APS: Performance of persimmon cultivars under Mediterranean coastal conditions in Hatay, J. Am. Pomol. Soc. 63(2), 2009
  s26 | Mustafa Kemal University: Fruit development and optimum harvest maturity in some astringent persimmon cultivars, Alatarim 20(1):12-21, 2021
  s27 | Mustafa Kemal University: Variation in some growth, fruit yield and quality of persimmon cultivars in Dortyol-Hatay, Acta Hortic. 996:359-365, 2013
  s28 | NARO NIFTS / Kyoto University: Persimmon genetics and breeding (Yonemori, Sugiura, Yamada), Plant Breed. Rev. 19:191-225, 2000
  s29 | China Forestry Press: China Fruit Records: Persimmon, 2013
  s30 | IVIA / UPV Valencia: Phenological growth stages of the persimmon tree (Garcia-Carbonell et al.), Ann. Appl. Biol. 141:73-76; PDO Kaki Ribera del Xuquer, 2002
  s31 | University of Florence: Germplasm and breeding of persimmon in Europe (Bellini & Giordani), Acta Hortic. 685:65-75, 2005
  s32 | HortResearch NZ / QDPI: Macro-climatic effects on fruit development of Fuyu, Acta Hortic. 436:195-202, 1997
  s33 | NSW Agriculture: Persimmon growing in NSW, Agfact H3.1.17, 2003
  s34 | University of California: Growing Persimmons, Leaflet 21277 (LaRue, Opitz, Beutel), 1982
  s35 | Missouri Department of Conservation: Field Guide: Persimmon
  s36 | University of Illinois: American persimmon notes (McDaniel), Fruit Var. Hort. Digest / NNGA reports, 1971
  s37 | University of Kentucky CCD: American persimmon crop profile, 2016
  s38 | USDA Forest Service AH 654: Silvics of North America 2: Common Persimmon (Halls 1990), Red Mulberry (Lamson 1990), 1990
  s39 | Gryshko National Botanical Garden: Biology of Diospyros virginiana in the Forest-Steppe of Ukraine (Grygorieva et al.), 2011
  s40 | University of Texas Press: Trees, Shrubs and Woody Vines of the Southwest (Vines), 1960
  s41 | New Mexico State University: Jujube, flowering and fruiting habits (S. Yao, workshop slides), 2019
  s42 | New Mexico State University: NMSU to host jujube tree workshop, fruit tasting at Alcalde, 2012
  s43 | China Encyclopedia Publishing House: Encyclopaedia of Liaocheng: phenology of woody plants
  s44 | Hebei Forest Seedling Station: Biological characters and cultivation of Dongzao jujube, journal abstract
  s45 | Kherson State Agrarian University: Jujube in the south of Ukraine, 2018
  s46 | China Forestry Press: China Fruit Records: Jujube (Zaojuan), 1993
  s47 | Xinjiang: Phenology of Huizao, Junzao, Zanhuang and Dongzao in Aksu, journal abstract
  s48 | Texas A&M AgriLife Extension: Home Fruit Production: Jujube (Lyons & McEachern), 1990
  s49 | New Mexico State University: Early performance of jujube fresh-eating cultivars, HortScience 54:1941, 2019
  s50 | New Mexico State University: Jujube: Chinese Date in New Mexico, H-330, 2012
  s51 | USAMV Bucharest: Characterization of two Romanian local biotypes of Ziziphus jujuba (Stanica), Acta Hortic. 840, 2009
  s52 | University of Arizona: Deciduous fruit for low desert, AZ1269, 2004
  s53 | Yuzuncu Yil Univ. J. Agric. Sci.: Phenological, pomological and morphological characteristics of mulberry species in Batman
  s54 | NSERI Korea: Morphological and chemical characteristics of mulberry fruit with varieties, J. Seric. Entomol. Sci. 40(1):1-7, 1998
  s55 | Royal Horticultural Society: Mulberries: grow your own, 2015
  s56 | Missouri Department of Conservation: Field Guide: Red Mulberry
  s57 | Iowa State University Extension: Mulberry (Trees of Iowa), 2000
  s58 | Universidad Miguel Hernandez: Mulberry clones at Orihuela (Sanchez-Salcedo et al.), 2015
  s59 | University of Arizona: Deciduous fruit and nuts for the low desert, AZ1269, 2004
  s60 | ARO Newe Ya'ar: 'Emek', a red and very early-ripening new pomegranate cultivar, HortScience 49(7):968, 2014
  s61 | USDA ARS NCGR Davis / UC: Pomegranate (Register of new fruit and nut cultivars), HortScience 53(6):770, 2018
  s62 | ARO Newe Ya'ar: Pomegranate: botany, horticulture, breeding, Hort. Rev. 35:127-191, 2009
  s63 | University of California: Growing Pomegranates in California, Leaflet 2459 (LaRue); Day & Wilkins, Acta Hortic. 890, 2011
  s64 | University of Georgia: Pomegranate Production, C 997 (MacLean et al.), 2011
  s65 | Texas A&M AgriLife Extension: Pomegranates, Texas Fruit and Nut Production (Stein et al.), 2010
  s66 | Akdeniz University: Physical and chemical changes during fruit development and flowering in Hicaznar grown in Antalya, 2000
  s67 | Harran University: Heat requirements of pomegranate cultivars in southern Anatolia, Erwerbs-Obstbau, doi 10.1007/s10341-014-0220-8, 2014
  s68 | Universidad Politecnica de Valencia: Phenological stages of the pomegranate tree, Ann. Appl. Biol. 130:135-140, 1997
  s69 | ISA Chott-Mariem: Diversity of pomegranate germplasm in Tunisia (Mars & Marrakchi 1999), 1999
  s70 | Stellenbosch University: Pomegranate Bhagwa and Ruby: maturity stages, Sci. Hortic. 150:37-46, 2013
  s71 | China Forestry Press: China Fruit Records: Pomegranate, 2013
`;

import type { Source } from './type.js';

/** Sources on heat: convection, radiation, bundles, altitude, short-time heating and fusing. */
export const heatSources = {
  'churchill-chu-1975': {
    title: 'Churchill and Chu, correlating equations for free convection from a horizontal cylinder',
    publisher: 'Int. J. Heat Mass Transfer 18, 1049–1053',
    edition: '1975',
    status: 'published',
    note: 'Equation read in solved textbook problems and in the tests of an open heat-transfer library; its range from memory.',
  },
  'morgan-1975': {
    title: 'Morgan, the overall convective heat transfer from smooth circular cylinders',
    publisher: 'Advances in Heat Transfer 11, 199–264',
    edition: '1975',
    status: 'memory',
    note: 'Coefficients from memory; they give the values printed in the tests of an open heat-transfer library.',
  },
  'heat-library-tests': {
    title: 'ht: heat transfer component of chemical engineering design library, test vectors of free convection',
    publisher: 'C. Bell (open source, MIT licence)',
    status: 'published',
  },
  'uw-mhtl-8406': {
    title: 'McQuillan, Culham and Yovanovich, Properties of dry air at one atmosphere, UW/MHTL 8406 G-01',
    publisher: 'University of Waterloo',
    edition: '1984',
    status: 'published',
    note: 'Fits within 0.15 % of tables from 200 to 400 K. A web copy prints 344.88 for 344.84 in the density.',
  },
  'air-tables': {
    title: 'Thermophysical properties of dry air at one atmosphere, as tabulated from Hilsenrath and Touloukian',
    publisher: 'engineering data pages',
    status: 'published',
  },
  'us-standard-atmosphere': {
    title: 'U.S. Standard Atmosphere, 1976 (ISO 2533 below 32 km)',
    publisher: 'NOAA, NASA, USAF',
    edition: '1976',
    status: 'memory',
  },
  'cengel-heat-transfer': {
    title: 'Çengel, Heat Transfer: a practical approach; example 9-1, problem 9-35, table A-15',
    publisher: 'McGraw-Hill',
    status: 'published',
    note: 'Problem 9-35 and its properties were read; some printed answers of it are from memory and say so.',
  },
  'incropera-heat-transfer': {
    title: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer; example 9.4, table A.4',
    publisher: 'Wiley',
    status: 'memory',
  },
  'holman-heat-transfer': {
    title: 'Holman, Heat Transfer; example 7-5',
    publisher: 'McGraw-Hill',
    status: 'memory',
  },
  'mcadams-1954': {
    title: 'McAdams, Heat Transmission; Nu = 0.53 Ra^¼ for horizontal cylinders, and a solved problem by it',
    publisher: 'McGraw-Hill',
    edition: '1954',
    status: 'published',
    note: 'The solved problem was read in course notes.',
  },
  'is-9857': {
    title: 'IS 9857, welding cables: dimensions and current ratings',
    publisher: 'Bureau of Indian Standards',
    edition: '1990',
    status: 'published',
  },
  'mil-w-5088': {
    title: 'MIL-W-5088L (SAE AS50881), wiring, aerospace vehicle: bundle derating curves',
    publisher: 'US Department of Defense',
    status: 'published',
    note: 'Curves read off the figure by a third party, to about ±0.01.',
  },
  'eee-inst-002': {
    title: 'EEE-INST-002 / MIL-STD-975, derating of electronic parts, wire section',
    publisher: 'NASA',
    status: 'memory',
    note: 'Rule (29 − N)/28 and 0.5; two bundled currents of its table were confirmed in other NASA texts.',
  },
  'nec-310-15': {
    title: 'NFPA 70 article 310.15(B), ambient correction and adjustment for more than three conductors',
    publisher: 'NFPA',
    edition: '2014',
    status: 'published',
  },
  'iec-60949': {
    title: 'IEC 60949, thermally permissible short-circuit currents',
    publisher: 'IEC',
    edition: '1988',
    status: 'memory',
    note: 'Constants of its table I; those of copper and aluminium were confirmed in secondary texts.',
  },
  'iec-60853-2': {
    title: 'IEC 60853-2, cyclic and emergency current rating of cables: thermal capacities, two-part wire',
    publisher: 'IEC',
    status: 'memory',
  },
  'onderdonk-1928': {
    title: "Onderdonk's fusing equation (E. R. Stauffacher, General Electric Review)",
    publisher: 'General Electric',
    edition: '1928',
    status: 'published',
    note: 'A web example of it has 234 − Ta for 234 + Ta: wrong by 5 %.',
  },
  'icea-p-32-382': {
    title: 'ICEA P-32-382, short-circuit characteristics of insulated cables',
    publisher: 'ICEA',
    status: 'published',
    note: 'Form as quoted in a secondary text.',
  },
  'preece-1888': {
    title: "Preece's fusing currents, as tabulated in electrical engineers' handbooks",
    publisher: 'W. H. Preece, Proceedings of the Royal Society',
    edition: '1884–1888',
    status: 'published',
    note: 'Copper coefficient read; those of other metals from memory.',
  },
  'hashin-shtrikman-1962': {
    title: 'Hashin and Shtrikman, bounds for the conductivity of two-phase materials (two-dimensional form)',
    publisher: 'Journal of Applied Physics 33, 3125',
    edition: '1962',
    status: 'memory',
  },
  'heat-balance': {
    title: 'Energy balance of a wire or a bundle: heat made equals heat given off',
    publisher: 'none',
    status: 'derived',
    note: 'Long horizontal wire, still air, surroundings at the temperature of the air.',
  },
} as const satisfies Record<string, Source>;

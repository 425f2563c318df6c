import type { Source } from './type.js';

/** Sources on batteries, cranking, alternators and charging. */
export const supplySources = {
  'college-physics-starter': {
    title:
      'College Physics, chapter on circuits: a starter motor behind a battery, sound and with corroded connections',
    publisher: 'OpenStax',
    status: 'published',
  },
  'dc-motor-examples': {
    title: 'Worked examples of direct-current motors with a constant field: speed at a current, with resistance added',
    publisher: 'university course and textbook',
    status: 'published',
  },
  'sae-j537': {
    title: 'SAE J537, storage batteries: cold-cranking rating',
    publisher: 'SAE International',
    status: 'published',
    note: 'Numbers of its test as vehicle service manuals print them; the standard itself was not read.',
  },
  'en-50342-1': {
    title: 'EN 50342-1, lead-acid starter batteries: cold-cranking current',
    publisher: 'CENELEC',
    status: 'published',
    note: 'Numbers of its test as a battery maker prints them; the standard itself was not read.',
  },
  'iec-60095-1': {
    title: 'IEC 60095-1, lead-acid starter batteries: cold-cranking current',
    publisher: 'IEC',
    status: 'published',
    note: 'Numbers of its test as a battery maker prints them; later editions follow EN 50342-1.',
  },
  'din-43539-2': {
    title: 'DIN 43539-2, starter batteries: cold-cranking current',
    publisher: 'DIN',
    status: 'published',
    note: 'Withdrawn. Numbers of its test as a battery maker prints them.',
  },
  'bci-cranking': {
    title: 'Cranking amperes (CA) of the North American battery trade, at 0 °C',
    publisher: 'a glossary of a battery maker',
    status: 'published',
  },
  'battery-rest-lists': {
    title: 'Lists of volts at rest and density of the acid against the charge of a 12 V lead battery',
    publisher: 'service literature and battery makers',
    status: 'published',
    note: 'They differ by up to 0.2 V down to a quarter and by more when empty, and do not say from which battery they are.',
  },
  'battery-load-test': {
    title: 'Load test of a starter battery: least volts by temperature',
    publisher: 'vehicle service manuals',
    status: 'published',
    note: 'Common practice of the trade; the manuals do not agree in the cold.',
  },
  'battery-maker-list': {
    title: 'Cold-cranking ratings of four batteries with the amperes of their load test',
    publisher: 'a list of a vehicle maker',
    status: 'published',
  },
  'lead-cell-volts': {
    title: 'Volts of a resting lead cell: relative density of its acid plus 0.845',
    publisher: 'textbooks',
    status: 'memory',
  },
  'acid-density-correction': {
    title: 'Reading of a hydrometer against the temperature of the acid: 0.004 each 10 °F from 80 °F',
    publisher: 'a page on batteries',
    status: 'published',
  },
  'peukert-law': {
    title: 'Peukert’s law with the hour rate: t = H (C / (I H))^k',
    publisher: 'battery literature',
    status: 'published',
    note: 'Holds near the rated temperature, for one steady discharge, from about the rated current up.',
  },
  'peukert-unreferenced': {
    title: 'Peukert’s law without the hour rate: t = C / I^k',
    publisher: 'battery literature',
    status: 'published',
    note: 'It stands in books and in meters, and is right only where C is the charge at a discharge of 1 A.',
  },
  'battery-guides': {
    title: 'Guides of the battery trade to run times and to typical exponents by kind',
    publisher: 'battery trade',
    status: 'published',
  },
  'fuse-drop-charts': {
    title: 'Diagnostic charts of the current in a circuit by the millivolts across its blade fuse',
    publisher: 'service literature',
    status: 'published',
    note: 'For genuine fuses; makers differ by about 15 % in resistance.',
  },
  'iso-8854': {
    title: 'ISO 8854, alternators with regulators: test methods and general requirements',
    publisher: 'ISO',
    status: 'memory',
    note: 'The form of the marking was read; 1500 and 6000 rpm of the rotor and 13.5 V are from memory.',
  },
  'alternator-pulley-guides': {
    title: 'Guides of alternator makers to pulley ratios and rotor speeds',
    publisher: 'alternator makers',
    status: 'published',
  },
  'regulator-limits': {
    title: 'Set-points of alternator regulators and their change with temperature',
    publisher: 'service literature',
    status: 'published',
    note: 'One limit line read (16 V at −17 °C, 13.5 V at 40 °C); 13.8 to 14.7 V and −10 to −30 mV/K from memory.',
  },
  'iso-16750-2': {
    title: 'ISO 16750-2, road vehicles: electrical loads on equipment, load dump',
    publisher: 'ISO',
    status: 'published',
    note: 'Figures as makers of suppressors and test laboratories print them; the standard itself was not read.',
  },
  'iso-7637-1': {
    title: 'ISO 7637-1, road vehicles: transients by conduction, severity levels of pulse 5',
    publisher: 'ISO',
    status: 'published',
    note: 'Withdrawn edition, as a maker prints it.',
  },
  'suppressor-energy': {
    title: 'Energy in a suppressor from the form of its current: K V I t',
    publisher: 'an application note of a maker of suppressors',
    status: 'published',
  },
  'isolator-practice': {
    title: 'Six-terminal battery isolators of motor sport: main pole, pole of the ignition, resistor',
    publisher: 'common practice',
    status: 'common-practice',
  },
  'charge-line': {
    title: 'Volts of a charging battery as a straight line over its charge, behind a resistance',
    publisher: 'battery literature',
    status: 'derived',
    note: 'A model of our own choice: the same as a capacitor behind a resistance. Real lead takes its last tenth more slowly.',
  },
} as const satisfies Record<string, Source>;

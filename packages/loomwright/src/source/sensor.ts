import type { Source } from './type.js';

/** Sources on dividers, preferred values, uncertainty, switch inputs, pulses, thermistors, RTDs, thermocouples. */
export const sensorSources = {
  'lessons-electric-circuits': {
    title: 'Lessons In Electric Circuits, volumes I (DC), II (AC), III (Semiconductors), IV (Digital)',
    publisher: 'T. R. Kuphaldt, open textbook',
    status: 'published',
  },
  'divider-assignment': {
    title: 'EL 1100 assignment 5, loaded voltage dividers, with answers',
    publisher: 'a college course on electricity',
    status: 'published',
    note: 'Its answers are rounded to three digits or to a stock value.',
  },
  'circuit-tutorials': {
    title: 'Tutorial answers and textbook figures on Thévenin circuits and RC low-pass filters',
    publisher: 'course material',
    status: 'published',
  },
  'iec-60063': {
    title: 'IEC 60063, preferred number series for resistors and capacitors',
    publisher: 'IEC',
    edition: '2015',
    status: 'published',
    note: 'E3 to E192 as printed in two open lists that agree; the text of the standard was not read.',
  },
  'jcgm-100': {
    title: 'JCGM 100, guide to the expression of uncertainty in measurement (GUM), annex H',
    publisher: 'BIPM, JCGM',
    edition: '2008',
    status: 'published',
  },
  'jcgm-101': {
    title: 'JCGM 101, propagation of distributions using a Monte Carlo method',
    publisher: 'BIPM, JCGM',
    edition: '2008',
    status: 'memory',
    note: 'Its additive examples (9.2) are from memory and were confirmed in closed form.',
  },
  'switch-ladder-notes': {
    title: 'Public notes on several buttons on one analogue input (2010, 2018)',
    publisher: 'electronics course notes',
    status: 'published',
  },
  'speed-sensor-notes': {
    title: 'Speed sensor handbook, teeth and frequency; wheel speed sensor pages of a service manual (2007)',
    publisher: 'instrument and vehicle makers',
    status: 'published',
  },
  'tyre-standards': {
    title: 'Tyre size designation (ISO 4000-1) and rolling circumference (ETRTO: 3.05 × diameter for radial tyres)',
    publisher: 'ISO, ETRTO',
    status: 'memory',
  },
} as const satisfies Record<string, Source>;

import type { Source } from './type.js';

/** Sources on CAN: lines, frames and response times. */
export const busSources = {
  'iso-11898-2': {
    title: 'ISO 11898-2, high-speed medium access unit of CAN, as makers of cable and transceivers quote it',
    publisher: 'ISO',
    status: 'published',
    note: 'The text of the standard was not read; each figure stands in a public manual that quotes it.',
  },
  'can-transceiver-sheets': {
    title: 'Data sheets of bus transceivers: levels, termination, stub length by rise time',
    publisher: 'makers of transceivers',
    status: 'published',
    note: 'Stub lengths by rise time are those of RS-485 parts; the same line theory holds for CAN.',
  },
  'can-cabling-pages': {
    title: 'Bus and stub lengths of CAN by bit rate, five manuals that do not agree with one another',
    publisher: 'makers of fieldbus parts, of a meter and of an engine controller',
    status: 'published',
    note: 'Recommendations of makers, not a standard.',
  },
  'fieldbus-cable-manual': {
    title: 'Cabling manual of a fieldbus on CAN: terminators, wire resistance by length, drop lines',
    publisher: 'a maker of fieldbus parts',
    status: 'published',
  },
  'cia-ds-102': {
    title: 'CiA DS 102, CAN physical layer for industrial applications, version 2.0',
    publisher: 'CAN in Automation',
    edition: '2.0',
    status: 'published',
    note: 'As maker pages quote it.',
  },
  'cia-301': {
    title: 'CiA 301, application layer, version 4.2.0: critical length of a stub, as a space-bus glossary quotes it',
    publisher: 'CAN in Automation',
    edition: '4.2.0',
    status: 'published',
  },
  'can-frame-bits': {
    title: 'Length of a classical CAN frame with its stuff bits: 47 + 8 s and 55 + 10 s bits',
    publisher: 'public questions and answers, course code',
    status: 'published',
    note: 'The closed form for 29-bit identifiers, 80 + 10 s, is from memory and follows from the same equation.',
  },
  'davis-2007': {
    title: 'Davis, Burns, Bril and Lukkien, CAN schedulability analysis: refuted, revisited and revised',
    publisher: 'Real-Time Systems 35, 239–272',
    edition: '2007',
    status: 'memory',
    note: 'Abstract and introduction were read; equations and table 2 are from memory, and agree with every figure here.',
  },
  'broster-2002': {
    title: 'Message set of Broster, Burns and Rodríguez-Navas (2002), as printed in the tests of an open library',
    publisher: 'IEEE Real-Time Systems Symposium',
    edition: '2002',
    status: 'published',
  },
  'sae-message-set': {
    title: 'Benchmark of 17 messages after an SAE report (Tindell and Burns 1994), and a course file after it',
    publisher: 'University of York; course material',
    status: 'published',
    note: 'The data of the course file were read. Response times of the benchmark are from memory, others worked out.',
  },
} as const satisfies Record<string, Source>;

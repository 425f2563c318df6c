import {
  type DumpLoad,
  isolatorOpening,
  type IsolatorOpeningInput,
  loadDump,
  loadDump12V,
  loadDump24V,
  type LoadDumpInput,
  type LoadDumpTable,
} from 'loomwright';
import { entriesOf, unread } from '../entries.js';
import { defineCard, type Values } from '../type.js';

const page = 'the-isolator';

export const isolatorOpeningCard = defineCard({
  name: 'isolatorOpening',
  area: 'supply',
  question: 'The isolator is opened with the engine running: does it stop, and which contacts are needed?',
  page,
  fields: [
    {
      kind: 'choice',
      name: 'alternatorAt',
      label: "The alternator's heavy wire ends",
      choices: [
        { value: 'vehicle', label: "on the vehicle's side of the isolator" },
        { value: 'battery', label: 'straight at the battery' },
      ],
      example: 'vehicle',
    },
    { kind: 'number', name: 'heldV', above: 0, example: 14.2, label: 'It holds' },
    { kind: 'number', name: 'alternatorMostA', above: 0, example: 60 },
    { kind: 'number', name: 'chargingA', min: 0, example: 18 },
    { kind: 'number', name: 'loadsOhm', above: 0, example: 1.2, help: 'All that is left on but the ignition.' },
    { kind: 'number', name: 'ignitionOhm', above: 0, example: 4 },
    { kind: 'number', name: 'ignitionHoldV', above: 0, example: 6 },
    {
      kind: 'number',
      name: 'exciterOhm',
      above: 0,
      optional: true,
      example: 48,
      help: 'Empty with a diode in its wire, or without a lamp.',
    },
    { kind: 'flag', name: 'ignitionPole', label: "A second pole opens the ignition's feed", example: false },
    { kind: 'number', name: 'dumpResistorOhm', above: 0, optional: true, example: null, help: 'Empty for none.' },
    { kind: 'number', name: 'runDownS', above: 0, example: 3 },
  ],
  results: [
    { name: 'ignitionOpenV', round: 'up', primary: true },
    { name: 'vehicleV', round: 'up' },
    { name: 'needs', round: 'nearest', label: 'Needed by common practice' },
    { name: 'missing', round: 'nearest', label: 'Of that not fitted' },
    { name: 'dumpedA', round: 'up' },
    { name: 'alternatorGivesA', round: 'up' },
    { name: 'aloneOhm', round: 'down' },
    { name: 'aloneW', round: 'up' },
    { name: 'dumpResistorA', round: 'up' },
    { name: 'dumpResistorW', round: 'up' },
    { name: 'dumpResistorJ', round: 'up' },
  ],
  steps: [
    {
      result: 'vehicleV',
      text: "On the vehicle's side",
      how: 'what the alternator holds, or its most current through all that is on; or what comes through the lamp',
      source: 'circuit-theory',
    },
    {
      result: 'aloneOhm',
      text: 'A resistor that would stop the engine by itself',
      formula: 'ignitionHoldV / (alternatorMostA - ignitionHoldV / loadsOhm - ignitionHoldV / ignitionOhm)',
      source: 'circuit-theory',
      when: ({ alternatorAt }) => alternatorAt === 'vehicle',
    },
    {
      result: 'aloneW',
      text: 'And its heat',
      formula: 'ignitionHoldV ^ 2 / aloneOhm',
      source: 'circuit-theory',
      when: ({ alternatorAt }) => alternatorAt === 'vehicle',
    },
    {
      result: 'dumpResistorW',
      text: 'Heat of the resistor that is fitted, at first',
      formula: 'vehicleV ^ 2 / dumpResistorOhm',
      source: 'circuit-theory',
      when: ({ dumpResistorOhm }) => typeof dumpResistorOhm === 'number',
    },
  ],
  sources: ['circuit-theory', 'isolator-practice'],
  cautions: ['isolator', 'battery', 'local-code'],
  run: (input: IsolatorOpeningInput): ReturnType<typeof isolatorOpening> & { needs: string; missing: string } => {
    const answer = isolatorOpening(input);
    const words = (fitted: boolean): string =>
      answer.contacts
        .filter((each) => fitted || !each.fitted)
        .map(({ contact }) => CONTACTS[contact])
        .join(', ') || 'nothing';
    return { ...answer, needs: words(true), missing: words(false) };
  },
  input: (uses): IsolatorOpeningInput => {
    const n = (name: string): number => uses[name] as number;
    const orNull = (name: string): number | null => (uses[name] as number | undefined) ?? null;
    return {
      alternatorAt: uses['alternatorAt'] as IsolatorOpeningInput['alternatorAt'],
      heldV: n('heldV'),
      alternatorMostA: n('alternatorMostA'),
      chargingA: n('chargingA'),
      loadsOhm: n('loadsOhm'),
      ignitionOhm: n('ignitionOhm'),
      ignitionHoldV: n('ignitionHoldV'),
      exciterOhm: orNull('exciterOhm'),
      ignitionPole: uses['ignitionPole'] as boolean,
      resistorOhm: orNull('dumpResistorOhm'),
      runDownS: n('runDownS'),
    };
  },
  scope: (_, output) => ({
    ignitionOpenV: output.ignitionV,
    alternatorGivesA: output.alternatorA,
    dumpResistorA: output.resistorA,
    dumpResistorW: output.resistorW,
    dumpResistorJ: output.resistorJ,
  }),
});

const CONTACTS = {
  main: 'main pole',
  ignition: 'second pole in the ignition',
  resistor: 'resistor contact',
  'exciter-diode': "diode in the lamp's wire",
} as const;

const LOAD = /^([^:]+):\s*(?:(\d*\.?\d+)\s*(Ω|ohm|mΩ),\s*)?stands\s+(\d*\.?\d+)\s*V$/;

/** `lamps: 1.6 Ω, stands 24 V; controller: stands 40 V`: what stays connected. */
function dumpLoads(fn: string, field: string, text: string): DumpLoad[] {
  return entriesOf(text).map((entry) => {
    const match = LOAD.exec(entry);
    if (match === null) throw unread(fn, field, entry, 'lamps: 1.6 Ω, stands 24 V, or controller: stands 40 V');
    const [, name = '', ohm, unit, volts] = match;
    const resistanceOhm = ohm === undefined ? null : Number(ohm) * (unit === 'mΩ' ? 1e-3 : 1);
    return { name: name.trim(), resistanceOhm, standsV: Number(volts) };
  });
}

const hasClamp = ({ clampV }: Values): boolean => typeof clampV === 'number';

export const loadDumpCard = defineCard({
  name: 'loadDump',
  area: 'supply',
  question: 'How high do the volts go when the alternator loses its battery, and what must a suppressor take?',
  page,
  fields: [
    {
      kind: 'choice',
      name: 'dumpTable',
      label: 'Ranges of',
      choices: [
        { value: 'load-dump-12-v', label: '12 V, ISO 16750-2', use: loadDump12V, identifier: 'loadDump12V' },
        { value: 'load-dump-24-v', label: '24 V, ISO 16750-2', use: loadDump24V, identifier: 'loadDump24V' },
      ],
      example: 'load-dump-12-v',
    },
    { kind: 'number', name: 'alternatorRatedA', above: 0, example: 80 },
    { kind: 'number', name: 'rotorRpm', above: 0, max: 30_000, example: 9000, label: 'Its rotor turns at' },
    {
      kind: 'choice',
      name: 'suppression',
      label: 'Suppressed in the alternator',
      choices: [
        { value: 'none', label: 'no' },
        { value: 'central', label: 'yes, by its diodes' },
      ],
      example: 'none',
    },
    {
      kind: 'number',
      name: 'pulseS',
      above: 0,
      example: 0.2,
      unit: 'ms',
      label: 'Length of the pulse',
      symbol: 't_d',
      help: '40 to 400 ms at 12 V.',
    },
    {
      kind: 'text',
      name: 'dumpLoads',
      label: 'What stays connected',
      example: 'lamps and fan: 1.6 Ω, stands 36 V; engine controller: stands 40 V; dash: stands 36 V',
      help: 'Name, resistance where it draws anything to speak of, volts that it stands.',
    },
    {
      kind: 'number',
      name: 'clampV',
      above: 0,
      optional: true,
      example: 28,
      label: 'Suppressor conducts from',
      help: 'Empty without a suppressor.',
    },
    { kind: 'number', name: 'dynamicOhm', example: 0.03, unit: 'mΩ' },
    { kind: 'number', name: 'suppressorMostA', example: 60 },
    { kind: 'number', name: 'suppressorMostJ', example: 120 },
    { kind: 'number', name: 'standingV', above: 0, example: 24, help: 'As when jumped from 24 V, from memory.' },
  ],
  results: [
    { name: 'clampedV', round: 'up', primary: true },
    { name: 'peakLoadsV', round: 'up' },
    { name: 'openPeakV', round: 'up' },
    { name: 'dumpSourceOhm', round: 'nearest' },
    { name: 'suppressorA', round: 'up' },
    { name: 'suppressorJ', round: 'up', label: 'Suppressor: energy of a pulse' },
    { name: 'conductsS', round: 'up', unit: 'ms' },
  ],
  steps: [
    {
      result: 'dumpSourceOhm',
      text: 'Resistance behind the pulse',
      how: 'ten times the volts times the speed, over 0.8 of the rating times 12 000 rpm',
      source: 'iso-16750-2',
    },
    {
      result: 'openPeakV',
      text: 'Peak with nothing connected',
      how: 'high volts go with high resistance: straight between the ends of the range',
      source: 'iso-16750-2',
    },
    {
      result: 'peakLoadsV',
      text: 'What is left of it at the loads that stay on',
      how: 'divided by them; never less than the supply, nor more than the alternator lets through',
      source: 'circuit-theory',
    },
    {
      result: 'clampedV',
      text: 'And with the suppressor',
      formula: 'clampV + dynamicOhm * suppressorA',
      source: 'circuit-theory',
      when: (values) => hasClamp(values) && values['suppression'] === 'none',
    },
    {
      result: 'suppressorJ',
      text: 'Energy that it takes',
      how: 'its volts times its current, added up until the pulse has sunk to its volts',
      source: 'circuit-theory',
      when: hasClamp,
    },
  ],
  sources: ['iso-16750-2', 'circuit-theory'],
  cautions: ['isolator', 'local-code'],
  run: loadDump,
  input: (uses): LoadDumpInput => {
    const n = (name: string): number => uses[name] as number;
    const clampV = uses['clampV'] as number | undefined;
    return {
      pulse: {
        kind: 'alternator',
        table: uses['dumpTable'] as LoadDumpTable,
        ratedA: n('alternatorRatedA'),
        rotorRpm: n('rotorRpm'),
        suppression: uses['suppression'] as 'none' | 'central',
        durationS: n('pulseS'),
      },
      loads: dumpLoads('loadDump', 'dumpLoads', String(uses['dumpLoads'] ?? '')),
      suppressor:
        clampV === undefined
          ? null
          : {
              clampV,
              dynamicOhm: n('dynamicOhm'),
              mostA: n('suppressorMostA'),
              mostJ: n('suppressorMostJ'),
            },
      standingV: n('standingV'),
    };
  },
  scope: (_, output) => ({ peakLoadsV: output.peakV, dumpSourceOhm: output.sourceOhm }),
});

import { type ResistanceBasis, splitCharge, type SplitChargeInput, type SplitLink } from 'loomwright';
import { basisField } from '../conductor/basis.js';
import { defineCard, type Uses, type Values } from '../type.js';
import { splitBattery, splitCable } from './split-lists.js';

const FN = 'splitCharge';
const isRelay = ({ linkKind }: Values): boolean => linkKind === 'relay';
const isDiode = ({ linkKind }: Values): boolean => linkKind === 'diode' || linkKind === 'isolator-diodes';

function linkOf(uses: Uses): SplitLink {
  const n = (name: string): number => uses[name] as number;
  const kind = uses['linkKind'] as SplitLink['kind'];
  switch (kind) {
    case 'relay': {
      const opensBelowV = (uses['opensBelowV'] as number | undefined) ?? null;
      return { kind, contactOhm: n('contactOhm'), ratedA: n('linkRatedA'), opensBelowV };
    }
    case 'converter':
      return {
        kind,
        outV: n('converterOutV'),
        mostOutA: n('mostOutA'),
        conversionEfficiency: n('conversionEfficiency'),
        leastInV: n('leastInV'),
        mostInV: n('mostInV'),
      };
    default:
      return { kind, thresholdV: n('thresholdV'), diodeOhm: n('diodeOhm'), ratedA: n('linkRatedA') };
  }
}

export const splitChargeCard = defineCard({
  name: 'splitCharge',
  area: 'supply',
  question: 'What does the second battery get, is it ever full, and what must its cable bear?',
  page: 'second-battery',
  fields: [
    {
      kind: 'choice',
      name: 'linkKind',
      label: 'The batteries are joined by',
      choices: [
        { value: 'relay', label: 'a relay' },
        { value: 'diode', label: 'a diode from battery to battery' },
        { value: 'isolator-diodes', label: 'two diodes, from the alternator' },
        { value: 'converter', label: 'a d.c. converter' },
      ],
      example: 'relay',
    },
    { kind: 'number', name: 'heldV', above: 0, example: 14.4 },
    { kind: 'number', name: 'alternatorMostA', above: 0, example: 70 },
    {
      kind: 'choice',
      name: 'senseAt',
      label: 'Its regulator looks at',
      choices: [
        { value: 'alternator', label: 'its own terminal' },
        { value: 'starter-battery', label: 'the starter battery' },
        { value: 'service-battery', label: 'the service battery' },
      ],
      example: 'alternator',
    },
    {
      kind: 'text',
      name: 'starterBattery',
      label: 'Starter battery',
      example: '60 Ah, 90 % full, 8 mΩ, filled at 14.2 V',
      help: 'Charge, how much of it, resistance inside, the volts that fill it.',
    },
    {
      kind: 'text',
      name: 'serviceBattery',
      label: 'Service battery',
      example: '95 Ah, 40 % full, 10 mΩ, filled at 14.2 V, takes 50 A',
      help: 'Likewise; and, if it says so, the most that it takes.',
    },
    { kind: 'number', name: 'emptyV', above: 0, example: 11.8, label: 'Volts of an empty battery', symbol: 'V_0' },
    { kind: 'number', name: 'restFullV', above: 0, example: 12.7 },
    { kind: 'number', name: 'mostChargeV', above: 0, example: 14.8 },
    { kind: 'number', name: 'chargeEfficiency', above: 0, max: 1, example: 0.85, unit: '%' },
    { kind: 'number', name: 'starterLoadA', min: 0, example: 22 },
    { kind: 'number', name: 'serviceLoadA', min: 0, example: 4 },
    { ...basisField, label: 'Resistance of cables by' },
    {
      kind: 'text',
      name: 'mainRun',
      label: 'Alternator to starter battery',
      example: '1.4 m out, 0.6 m back of 25, joints 0.8 mΩ',
      help: 'Metres out and back, size, joints and fuses.',
    },
    {
      kind: 'text',
      name: 'serviceRun',
      label: 'On to the service battery',
      example: '3.6 m out, 3.6 m back of 16, joints 3 mΩ',
    },
    { kind: 'number', name: 'conductorTempC', min: -100, max: 400, example: 40, label: 'Copper of the cables' },
    { kind: 'number', name: 'contactOhm', min: 0, example: 0.0005, unit: 'mΩ', label: 'Contact of the relay' },
    { kind: 'number', name: 'linkRatedA', above: 0, example: 120 },
    {
      kind: 'number',
      name: 'opensBelowV',
      above: 0,
      optional: true,
      example: 12.8,
      help: 'For a relay that goes by volts. Empty where the ignition holds it.',
    },
    {
      kind: 'number',
      name: 'thresholdV',
      example: 0.6,
      label: 'Diode, at no current',
      help: 'Silicon about 0.6 V, Schottky 0.3 V.',
    },
    { kind: 'number', name: 'diodeOhm', example: 0.003, unit: 'mΩ' },
    { kind: 'number', name: 'converterOutV', example: 14.4 },
    { kind: 'number', name: 'mostOutA', example: 30 },
    { kind: 'number', name: 'conversionEfficiency', example: 0.9, unit: '%' },
    { kind: 'number', name: 'leastInV', example: 11.5 },
    { kind: 'number', name: 'mostInV', example: 16 },
    { kind: 'number', name: 'wantedChargeFraction', above: 0, max: 1, example: 0.8, unit: '%' },
    { kind: 'number', name: 'driveTimeH', above: 0, max: 1000, example: 2 },
    { kind: 'number', name: 'crankingA', above: 0, optional: true, example: 180, label: 'Starter draws' },
    { kind: 'number', name: 'fuseRatingA', above: 0, optional: true, example: 80 },
  ],
  results: [
    { name: 'finalFraction', round: 'nearest', digits: 2, unit: '%', primary: true },
    { name: 'sparedV', round: 'nearest', digits: 2 },
    { name: 'chargeTimeH', round: 'up' },
    { name: 'drivenChargeFraction', round: 'down', digits: 2, unit: '%' },
    { name: 'serviceNowV', round: 'down', digits: 4 },
    { name: 'serviceNowA', round: 'nearest' },
    { name: 'starterNowV', round: 'down', digits: 4 },
    { name: 'starterNowA', round: 'nearest' },
    { name: 'linkA', round: 'up' },
    { name: 'linkDropV', round: 'up' },
    { name: 'cableDropV', round: 'up' },
    { name: 'linkW', round: 'up' },
    { name: 'rushA', round: 'up' },
    { name: 'reverseA', round: 'up' },
    { name: 'continuousA', round: 'up', label: 'Cable carries for long', symbol: 'I_\\mathrm{long}' },
    { name: 'leastFuseA', round: 'up' },
    { name: 'feedShortA', round: 'up' },
    { name: 'serviceShortA', round: 'up' },
  ],
  steps: [
    {
      result: 'serviceOhm',
      text: 'Cable to the service battery, out and back with its joints',
      how: 'by the table, warmed',
      source: 'circuit-theory',
    },
    {
      result: 'linkA',
      text: 'Current in it as the drive begins',
      how: 'each battery takes what its volts and resistances let through; the alternator gives what is asked up to its most',
      source: 'charge-line',
    },
    { result: 'cableDropV', text: 'Lost in the cable', formula: 'linkA * serviceOhm', source: 'circuit-theory' },
    {
      result: 'linkDropV',
      text: 'Lost in the relay',
      formula: 'linkA * contactOhm',
      source: 'circuit-theory',
      when: isRelay,
    },
    {
      result: 'linkDropV',
      text: 'Lost in the diode',
      formula: 'thresholdV + linkA * diodeOhm',
      source: 'circuit-theory',
      when: isDiode,
    },
    {
      result: 'finalServiceV',
      text: 'Volts at the service battery when nothing is left to charge',
      how: 'the same circuit with the loads alone',
      source: 'circuit-theory',
    },
    {
      result: 'sparedV',
      text: 'Over what fills it',
      formula: 'finalServiceV - fillingV',
      source: 'given-by-caller',
    },
    {
      result: 'finalFraction',
      text: 'So it fills to',
      how: 'where the line of charging meets these volts; full where it lies above them',
      source: 'charge-line',
    },
    {
      result: 'reverseA',
      text: 'Comes back while cranking',
      formula: '(serviceRestV - aloneV) / (serviceOhm + contactOhm + serviceInsideOhm + starterInsideOhm)',
      source: 'circuit-theory',
      when: (values) => isRelay(values) && typeof values['crankingA'] === 'number',
    },
    { result: 'leastFuseA', text: 'Fuses at both ends', formula: 'continuousA / 0.75', source: 'common-practice' },
  ],
  sources: ['circuit-theory', 'charge-line', 'common-practice', 'iso-19642'],
  cautions: ['battery', 'stored-heat', 'isolator', 'local-code'],
  run: splitCharge,
  input: (uses): SplitChargeInput => {
    const n = (name: string): number => uses[name] as number;
    const text = (name: string): string => String(uses[name] ?? '');
    const resistanceBasis = uses['resistanceBasis'] as ResistanceBasis;
    const shared = {
      emptyV: n('emptyV'),
      restFullV: n('restFullV'),
      mostV: n('mostChargeV'),
      chargeEfficiency: n('chargeEfficiency'),
    };
    return {
      alternator: {
        heldV: n('heldV'),
        mostA: n('alternatorMostA'),
        senseAt: uses['senseAt'] as SplitChargeInput['alternator']['senseAt'],
      },
      starter: splitBattery(FN, 'starterBattery', text('starterBattery'), shared),
      service: splitBattery(FN, 'serviceBattery', text('serviceBattery'), shared),
      starterLoadA: n('starterLoadA'),
      serviceLoadA: n('serviceLoadA'),
      mainCable: splitCable(FN, 'mainRun', text('mainRun'), resistanceBasis),
      serviceCable: splitCable(FN, 'serviceRun', text('serviceRun'), resistanceBasis),
      resistanceBasis,
      conductorTempC: n('conductorTempC'),
      link: linkOf(uses),
      wantedChargeFraction: n('wantedChargeFraction'),
      driveTimeH: n('driveTimeH'),
      crankingA: (uses['crankingA'] as number | undefined) ?? null,
      fuseRatingA: (uses['fuseRatingA'] as number | undefined) ?? null,
    };
  },
  scope: (values, output) => {
    if (!output.possible) return {};
    const { now, end, rush, cranking, fuses } = output;
    const inside = (name: string): number => splitBattery(FN, name, String(values[name]), NO_VOLTS).resistanceOhm;
    const fillingV = splitBattery(FN, 'serviceBattery', String(values['serviceBattery']), NO_VOLTS).chargeFullV;
    const serviceInsideOhm = inside('serviceBattery');
    return {
      finalFraction: output.endChargeFraction,
      finalServiceV: end?.serviceV ?? null,
      fillingV,
      serviceNowV: now.serviceV,
      serviceNowA: now.serviceA,
      starterNowV: now.starterV,
      starterNowA: now.starterA,
      linkA: now.linkA,
      linkDropV: now.linkDropV,
      cableDropV: now.cableDropV,
      linkW: now.linkW,
      rushA: rush?.linkA ?? null,
      reverseA: cranking?.reverseA ?? null,
      aloneV: cranking?.aloneV ?? null,
      serviceRestV: cranking === null ? null : cranking.serviceV + serviceInsideOhm * cranking.reverseA,
      serviceInsideOhm,
      starterInsideOhm: inside('starterBattery'),
      leastFuseA: fuses[0].leastRatingA,
      feedShortA: fuses[0].shortA,
      serviceShortA: fuses[1].shortA,
    };
  },
});

const NO_VOLTS = { emptyV: 0, restFullV: 0, mostV: 0, chargeEfficiency: 1 };

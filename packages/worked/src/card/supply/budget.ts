import { energyBudget, type EnergyBudgetInput } from 'loomwright';
import { defineCard } from '../type.js';
import { budgetLoadList, curveList, stateList } from './lists.js';
import { restEnd, restEndFields } from './rest-end.js';

const worst = 'the tightest state';

export const energyBudgetCard = defineCard({
  name: 'energyBudget',
  area: 'supply',
  question: 'Does the alternator feed everything that is on?',
  page: 'energy-budget',
  fields: [
    {
      kind: 'text',
      name: 'points',
      label: 'Curve of the alternator',
      example: '1100 rpm 0 A; 1500 rpm 28 A; 2000 rpm 45 A; 4000 rpm 72 A; 6000 rpm 80 A',
      help: 'Speed of its rotor, and amperes. From two marks alone: 1500 rpm 28 A; 6000 rpm 80 A.',
    },
    { kind: 'number', name: 'curveV', above: 0, example: 13.5, help: '13.5 V by ISO 8854, from memory.' },
    { kind: 'number', name: 'pulleyRatio', above: 0, example: 2.5, help: 'Diameter of the crank pulley over its own.' },
    { kind: 'number', name: 'mostRotorRpm', above: 0, example: 15000, optional: true },
    {
      kind: 'text',
      name: 'states',
      label: 'Ways of use',
      example: 'idle 800 rpm; road 2200 rpm; hot idle 800 rpm 80 %; parked 0 rpm wants 3 h',
      help: 'Name, engine speed, share of the curve where it is hot, hours wanted: hot idle 800 rpm 80 %.',
    },
    {
      kind: 'text',
      name: 'loads',
      label: 'Loads',
      example:
        'engine 12 A: idle, road, hot idle; fan 20 A #1: idle 40 %, road 10 %, hot idle 80 %; lamps 135 W #2: idle, road, hot idle; radio 2 A #3: idle, road, hot idle, parked 20 %; screen 16 A #4: idle 50 %, road 50 %; fridge 6 A #5: idle 50 %, road 50 %, hot idle 50 %, parked 50 %',
      help: 'Name, amperes or watts, importance (#1 first; none: must stay on), then when it is on: fan 20 A #1: idle 40 %, road 10 %.',
    },
    { kind: 'number', name: 'ratedChargeAh', above: 0, example: 60 },
    { kind: 'number', name: 'ratedTimeH', above: 0, example: 20 },
    { kind: 'number', name: 'peukertExponent', min: 1, max: 2, example: 1.2, help: '1 for plain ampere-hours.' },
    { kind: 'number', name: 'startChargeFraction', min: 0, max: 1, example: 0.95, unit: '%' },
    { kind: 'number', name: 'endChargeFraction', min: 0, max: 1, example: 0.5, unit: '%' },
    ...restEndFields,
    { kind: 'number', name: 'acceptanceA', above: 0, example: 20, help: 'A fifth to a third of its ampere-hours.' },
    {
      kind: 'number',
      name: 'chargeEfficiency',
      above: 0,
      max: 1,
      example: 0.85,
      help: '0.85 for lead, common practice.',
    },
  ],
  results: [
    { name: 'balanceA', round: 'down', primary: true, label: `Left over in ${worst}` },
    { name: 'outputA', round: 'down', label: `Alternator gives in ${worst}` },
    { name: 'loadsMeanA', round: 'up', label: `Loads take in ${worst}` },
    { name: 'lowMarkA', round: 'down' },
    { name: 'ratedMarkA', round: 'down' },
  ],
  steps: [
    {
      result: 'stateRotorRpm',
      text: `Speed of the rotor in ${worst}`,
      formula: 'pulleyRatio * stateEngineRpm',
      source: 'alternator-pulley-guides',
    },
    {
      result: 'outputA',
      text: 'What the curve gives there',
      how: 'straight between its points, times the share of the curve that is left hot',
      source: 'iso-8854',
    },
    {
      result: 'loadsMeanA',
      text: 'What the loads take',
      how: 'each current by its share of the time, summed',
      source: 'circuit-theory',
    },
    { result: 'balanceA', text: 'Left over', formula: 'outputA - loadsMeanA', source: 'circuit-theory' },
  ],
  sources: [
    'circuit-theory',
    'peukert-law',
    'iso-8854',
    'alternator-pulley-guides',
    'battery-rest-lists',
    'common-practice',
  ],
  cautions: ['battery', 'local-code'],
  run: energyBudget,
  input: (uses): EnergyBudgetInput => {
    const fn = 'energyBudget';
    const number = (name: string): number => uses[name] as number;
    const mostRotorRpm = uses['mostRotorRpm'] as number | undefined;
    return {
      alternator: {
        points: curveList(fn, 'points', uses['points'] as string),
        curveV: number('curveV'),
        pulleyRatio: number('pulleyRatio'),
        ...(mostRotorRpm === undefined ? {} : { mostRotorRpm }),
      },
      states: stateList(fn, 'states', uses['states'] as string),
      loads: budgetLoadList(fn, 'loads', uses['loads'] as string),
      battery: {
        ratedChargeAh: number('ratedChargeAh'),
        ratedTimeH: number('ratedTimeH'),
        peukertExponent: number('peukertExponent'),
        startChargeFraction: number('startChargeFraction'),
        end: restEnd(uses),
        acceptanceA: number('acceptanceA'),
        chargeEfficiency: number('chargeEfficiency'),
      },
    };
  },
  scope: (values, { states }) => {
    const asked = stateList('energyBudget', 'states', String(values['states']));
    // A state that only has to last some hours drains the battery by design: it says nothing of the balance.
    const meant = states.filter((_, i) => asked[i]?.wantedTimeH === undefined && asked[i]?.engineRpm !== 0);
    const [state] = [...(meant.length > 0 ? meant : states)].sort((a, b) => a.balanceA - b.balanceA);
    return {
      stateRotorRpm: state?.rotorRpm ?? null,
      stateEngineRpm: asked.find(({ name }) => name === state?.name)?.engineRpm ?? null,
      outputA: state?.outputA ?? null,
      loadsMeanA: state?.meanA ?? null,
      balanceA: state?.balanceA ?? null,
    };
  },
});

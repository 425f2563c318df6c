// A whole vehicle planned: 40 to 4000 circuits, against one `sizeFeed` a wire. The vehicle is made by rule: for every
// eight circuits one fuse box with its trunk, ten boxes on a battery, four kinds of load, three states. Every way of the
// grounds is lost in turn; with `loops` each box has a second strap, so that a loss leaves another way.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { parseLoom, planLoom, sheetFiles } from '@loomwright/harness';
import { bladeFuse, chooseFuse, heatingByBalance, iso19642, iso19642ThinWall, sizeFeed } from 'loomwright';

const SIZES = [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120];

/** A loom file of so many loads, as JSON, which is YAML too. */
export function fileOf(count, loops = false) {
  const boxes = Math.max(1, Math.round(count / 8));
  const main = Math.ceil(boxes / 10);
  const places = { middle: place(0, 60) };
  const batteries = {};
  const routes = {};
  const fuseBoxes = {};
  const grounds = { frame: { place: 'middle', joint: '0.2 mΩ' } };
  const items = {};
  const states = {};
  for (const [name, volts, alternator] of [
    ['engine running', '13.8 V', 'full'],
    ['engine off', '12.4 V', 'off'],
    ['low', '11.8 V', 'off'],
  ]) {
    states[name] = {
      volts: Object.fromEntries(Array.from({ length: main }, (_, m) => [`battery ${m}`, volts])),
      alternator,
      isolator: 'open',
    };
  }
  for (let m = 0; m < main; m++) {
    places[`hub ${m}`] = place(m + 1, 50);
    routes[`trunk ${m}`] = { from: 'middle', to: `hub ${m}`, length: `${1 + (m % 5) / 4} m` };
    batteries[`battery ${m}`] = { place: `hub ${m}`, ground: `hub stud ${m}`, cable: '0.4 m', resistance: '5 mΩ' };
    grounds[`hub stud ${m}`] = { place: `hub ${m}`, joint: '0.3 mΩ', to: 'frame', body: '0.4 mΩ' };
  }
  for (let b = 0; b < boxes; b++) {
    const m = b % main;
    places[`bay ${b}`] = place(b / 10, 45 + (b % 4) * 5);
    routes[`branch ${b}`] = { from: `hub ${m}`, to: `bay ${b}`, length: `${0.6 + (b % 3) / 2} m` };
    fuseBoxes[`box ${b}`] = {
      place: `bay ${b}`,
      from: { battery: `battery ${m}` },
      protection: {
        fuse: 'bolt-in-fuse-sf51',
        at: `hub ${m}`,
        rerating: '85 %',
        resistance: '0.4 mΩ',
        clearWithin: '5 s',
      },
      family: 'blade-fuse',
      positions: 10,
      temperature: '50 °C',
      contact: '2 mΩ',
    };
  }
  const loads = [
    ['constant current', { current: '4 A' }, 'motor', 'ac-43-13-1b-14-v-intermittent'],
    ['constant current', { current: '1.8 A' }, 'lamp', 'general-feed-10-percent'],
    ['resistance', { resistance: '2.5 Ω' }, 'resistive', 'general-feed-10-percent'],
    ['constant power', { power: '60 W' }, 'capacitor', 'general-feed-10-percent'],
  ];
  for (let i = 0; i < count; i++) {
    const b = i % boxes;
    const [kind, more, nature, budget] = loads[i % 4];
    if (places[`end ${b}`] === undefined) {
      places[`end ${b}`] = place(b / 10 + 1, 55);
      routes[`end branch ${b}`] = { from: `bay ${b}`, to: `end ${b}`, length: '1.2 m' };
      grounds[`end stud ${b}`] = { place: `end ${b}`, joint: '0.5 mΩ', to: `hub stud ${b % main}`, body: '0.5 mΩ' };
      if (loops) grounds[`end stud ${b}`].bonds = [{ to: `hub stud ${b % main}`, strap: '2 m' }];
    }
    items[`load ${i}`] = {
      kind: 'load',
      place: `end ${b}`,
      connector: '3 mΩ',
      load: { kind, ...more },
      nature,
      duty: '50 %',
      budget,
      from: { box: `box ${b}`, position: Math.floor(i / boxes) + 1 },
      return: { ground: `end stud ${b}` },
      on: i % 3 === 0 ? ['engine running', 'low'] : ['engine running', 'engine off'],
    };
  }
  return JSON.stringify({
    vehicle: { name: `${count} circuits, made by rule` },
    supply: { batteries },
    places,
    routes,
    grounds,
    fuseBoxes,
    controllers: {},
    buses: {},
    relayTypes: {},
    items,
    states,
    rules: {
      wire: 'iso-19642',
      stock: SIZES.map((size) => `${size} mm²`),
      insulation: '125 °C',
      heating: 'heat-balance',
      cover: 'iso-19642-thin-wall',
      coverConductivity: '0.17 W/(m·K)',
      altitude: '0 m',
      bundle: 'mil-w-5088',
      bundleDiameter: 'multiplication-factor',
      leastArea: '0.75 mm²',
      leastSignalArea: '0.5 mm²',
      terminal: '1 mΩ',
      stud: '0.1 mΩ',
      slack: '5 %',
      ends: '10 cm',
      overload: 'iec-60364-4-43',
      continuousShare: '75 %',
      clearWithin: '0.5 s',
      shortVoltage: '11.5 V',
      feederDrop: '0.25 V',
      strapDrop: '2 V',
      signalDrop: '0.2 V',
      unfused: '0.3 m',
      coilDriverDrop: '0.3 V',
      ratio: 'ac-43-13-1b-switch-12-v',
    },
  });
}

function place(x, ambient) {
  return { x: `${x} m`, y: '0 m', ambient: `${ambient} °C`, water: 'dry' };
}

/** One `sizeFeed` a wire: the work of sizing as many plain circuits, nothing shared. */
function oneEach(count) {
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const sized = sizeFeed({
      supplyV: 13.4,
      judgedAtV: [],
      outParts: [
        { name: 'fuse', fuse: 'chosen' },
        { name: 'contacts', kind: 'other', resistanceOhm: 0.006 },
        { name: 'out', lengthM: 1.4 },
      ],
      returnParts: [{ name: 'back', lengthM: 0.2 }],
      load: { kind: 'constant-current', currentA: 2 + (i % 4) },
      resistanceBasis: iso19642,
      stock: SIZES,
      limits: { dropV: 0.8 },
      heating: {
        by: heatingByBalance,
        wireTable: iso19642ThinWall,
        insulationTempC: 125,
        ambientTempC: 55,
        altitudeM: 0,
        insulationConductivityWPerMK: 0.17,
        bundleFactor: 0.6,
      },
      leastAreaMm2: 0.75,
      protection: {
        kind: 'fuse',
        by: chooseFuse,
        family: bladeFuse,
        continuousFraction: 0.75,
        overloadRule: 'iec-60364-4-43',
        fuseTempC: 50,
        shortSupplyV: 11.5,
        sourceResistanceOhm: 0.008,
        clearWithinS: 0.5,
      },
    });
    sum += sized.possible ? sized.areaMm2 : 0;
  }
  return sum;
}

/** The same in a browser, from the last key to the picture: planned, its sheets made as texts, drawn and shown. */
function inPage(file) {
  const child = spawnSync(process.execPath, [fileURLToPath(new URL('./in-page.mjs', import.meta.url)), '7'], {
    input: file,
    encoding: 'utf8',
  });
  if (child.status !== 0) throw new Error(child.stderr);
  return JSON.parse(child.stdout);
}

export default {
  question: 'What does planning a whole vehicle cost, against one sizeFeed a wire, and how does it grow?',
  how: { targetMs: 200, rounds: 7 },
  ratios: [
    { name: '150 circuits planned, against 150 times one sizeFeed', of: 'plan 150', to: 'sizeFeed 150', goal: 12 },
    { name: 'growth from 40 to 400 circuits (10 is linear)', of: 'plan 400', to: 'plan 40', goal: 12 },
    { name: 'growth from 400 to 4000 circuits (10 is linear)', of: 'plan 4000', to: 'plan 400', goal: 12 },
    { name: 'growth from 150 to 1500 circuits (10 is linear)', of: 'plan 1500', to: 'plan 150', goal: 12 },
    { name: 'the same with loops in the grounds', of: 'loops 1500', to: 'loops 150', goal: 12 },
    { name: 'the same with all sheets and drawings made', of: 'all 1500', to: 'all 150', goal: 12 },
  ],
  prepare(quick) {
    const counts = quick ? [40, 80] : [40, 150, 400, 1500, 4000];
    const looms = new Map(
      counts.map((count) => {
        const parsed = parseLoom(fileOf(count));
        if (!parsed.ok) throw new Error(`${count}: ${JSON.stringify(parsed.problems.slice(0, 3))}`);
        const plan = planLoom(parsed.loom);
        const loads = plan.circuits.filter(({ kind }) => kind === 'load').length;
        if (loads !== count || !plan.settled.agreed)
          throw new Error(`${count}: ${loads}, ${JSON.stringify(plan.settled)}`);
        if (JSON.stringify(planLoom(parsed.loom)) !== JSON.stringify(plan)) throw new Error(`${count}: two plans`);
        if (plan.losses.length === 0) throw new Error(`${count}: no ground was lost`);
        return [count, parsed.loom];
      }),
    );
    const looped = new Map(
      (quick ? [40] : [150, 1500]).map((count) => {
        const parsed = parseLoom(fileOf(count, true));
        if (!parsed.ok) throw new Error(`${count}: ${JSON.stringify(parsed.problems.slice(0, 3))}`);
        const beside = planLoom(parsed.loom).losses.filter(({ cutOff }) => cutOff.length === 0).length;
        if (beside < count / 8) throw new Error(`${count}: only ${beside} ways have another beside them`);
        return [count, parsed.loom];
      }),
    );
    const loops = (count) => () => planLoom(looped.get(count)).wires.length;
    const all = (count) => () => sheetFiles(planLoom(looms.get(count))).reduce((sum, { text }) => sum + text.length, 0);
    const plan = (count) => () => planLoom(looms.get(count)).wires.reduce((sum, wire) => sum + wire.lengthM, 0);
    const ways = quick
      ? { 'plan 40': plan(40), 'plan 80': plan(80), 'loops 40': loops(40), 'all 40': all(40) }
      : {
          'sizeFeed 150': () => oneEach(150),
          'plan 40': plan(40),
          'plan 150': plan(150),
          'plan 400': plan(400),
          'plan 1500': plan(1500),
          'plan 4000': plan(4000),
          'loops 150': loops(150),
          'loops 1500': loops(1500),
          'all 150': all(150),
          'all 1500': all(1500),
        };
    const page = quick ? null : inPage(fileOf(150));
    if (page !== null)
      ways['150 in the page'] = { timedNs: () => page.warmMs.pop() * 1e6, mostRounds: page.warmMs.length };
    const seen = page === null ? 'not measured' : `the first time ${Math.round(page.firstMs)} ms`;
    return { count: 1, ways, note: `goals: all 150 in 150 ms, in the page in 400 ms; in the page ${seen}` };
  },
};

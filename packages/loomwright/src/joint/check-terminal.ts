import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needAreaMm2 } from '../conductor/area.js';
import { gaugeAreaMm2, gaugeNumber } from '../conductor/gauge.js';
import { InputError } from '../error/index.js';
import {
  needAbove,
  needAtLeast,
  needBetween,
  needInput,
  needInteger,
  needList,
  needOneOf,
  needTempC,
} from '../error/guard.js';
import type { SourceStatus } from '../source/index.js';
import type { ContactDerating, LoadingTable, Plating, Terminal } from '../table/index.js';
import { loadingColumn, loadingOf, needLoadingTable } from './loading-factor.js';
import { pinCurrent } from './pin-current.js';

export interface CheckTerminalInput {
  readonly terminal: Terminal;
  /** Conductor in the crimp in mm²: of several wires in one crimp the sum. At least 0.001. */
  readonly areaMm2: number;
  /** Largest diameter over the insulation in mm, above 0. */
  readonly outerDiameterMm: number;
  /** Smallest diameter over the insulation in mm; the largest unless given. */
  readonly leastOuterMm?: number;
  /** Current of the contact in A, r.m.s., at least 0. */
  readonly currentA: number;
  /** Temperature around the connector in °C. */
  readonly ambientTempC: number;
  /** Contacts of the connector. */
  readonly contactCount: number;
  /** Contacts of them that carry current at the same time, this one included. */
  readonly loadedCount: number;
  /** Factors for neighbours and thin wires; required where more than one contact is loaded. */
  readonly loadingTable?: LoadingTable;
  /** Plating of the contact that it mates with; not judged unless given. */
  readonly matingPlating?: Plating;
  /** Largest drop over the contact in V; not judged unless given. 0.06 is usual for sealed connectors. */
  readonly dropLimitV?: number;
}

export interface CheckTerminalResult {
  /** Whether every check is met. */
  readonly ok: boolean;
  /** Current that the contact may carry here in A; null where the terminal's data do not tell. */
  readonly allowedCurrentA: number | null;
  /** Factor for neighbours and thin wires. */
  readonly loadingFactor: number;
  /** Volts lost in the contact; null where its resistance is not known. */
  readonly contactDropV: number | null;
  /** Heat of the contact in W; null likewise. */
  readonly contactLossW: number | null;
  readonly checks: readonly Check[];
  /** The check with the least room. */
  readonly decidedBy: string;
}

const PLATINGS: readonly Plating[] = ['tin', 'silver', 'gold', 'nickel'];

/**
 * Whether a terminal suits a wire, its current and its place.
 *
 * Use it for each end of a wire. It holds the conductor against the crimp, the insulation against seal or grip, the
 * current against what heat, neighbours and a thin wire leave (the column of the loading table goes by the area), the contact's drop against a limit, and the platings against each
 * other. A terminal whose derating is not known is promised nothing above 25 °C.
 *
 * $$I_\mathrm{allowed} = k_\mathrm{load}\,I(T_\mathrm{amb}), \qquad U = I\,R_\mathrm{contact}$$
 *
 * Derating by points runs in $I^2$ between them, as heat does; above the last point nothing is promised.
 *
 * @param input terminal, wire, current, surroundings, neighbours
 * @returns checks with the one that decided, allowed current, drop and heat
 * @throws InputError when a field is missing or out of range, or a loading table is missing where one is needed
 * @source the terminal's own; connector-loading-factors; iec-60512-5-2; plating-practice
 * @example checkTerminal({ terminal: bladeTerminals.rows[4], areaMm2: 2.5, outerDiameterMm: 3, currentA: 12, ambientTempC: 60, contactCount: 2, loadedCount: 1 }).allowedCurrentA //=> 21.1994
 */
export function checkTerminal(input: CheckTerminalInput): CheckTerminalResult {
  needInput('checkTerminal', input);
  const { terminal, areaMm2, outerDiameterMm, currentA, ambientTempC, contactCount, loadedCount } = input;
  const { leastOuterMm = outerDiameterMm, loadingTable, matingPlating, dropLimitV } = input;
  needTerminal(terminal);
  needAreaMm2('checkTerminal', areaMm2);
  needAbove('checkTerminal', 'outerDiameterMm', outerDiameterMm);
  needAbove('checkTerminal', 'leastOuterMm', leastOuterMm);
  if (leastOuterMm > outerDiameterMm) {
    throw new InputError('checkTerminal', 'leastOuterMm', 'atMost', leastOuterMm, `must be at most ${outerDiameterMm}`);
  }
  needAtLeast('checkTerminal', 'currentA', currentA);
  needTempC('checkTerminal', 'ambientTempC', ambientTempC);
  needInteger('checkTerminal', 'contactCount', contactCount, 1);
  needInteger('checkTerminal', 'loadedCount', loadedCount, 1);
  if (loadedCount > contactCount) {
    throw new InputError('checkTerminal', 'loadedCount', 'atMost', loadedCount, `must be at most ${contactCount}`);
  }
  if (matingPlating !== undefined) needOneOf('checkTerminal', 'matingPlating', matingPlating, PLATINGS);
  if (dropLimitV !== undefined) needAbove('checkTerminal', 'dropLimitV', dropLimitV);

  let loadingFactor = 1;
  if (loadingTable !== undefined || loadedCount > 1) {
    needLoadingTable('checkTerminal', 'loadingTable', loadingTable as LoadingTable);
    const table = loadingTable as LoadingTable;
    const column = loadingColumn(
      table,
      (gauge) => gaugeAreaMm2(gaugeNumber('checkTerminal', 'loadingTable', gauge)) <= areaMm2,
    );
    if (column < 0) {
      throw new InputError(
        'checkTerminal',
        'areaMm2',
        'inTable',
        areaMm2,
        `must be at least AWG ${table.gauges[0] ?? ''} for ${table.key}`,
      );
    }
    loadingFactor = loadingOf(table, column, contactCount, loadedCount).factor;
  }
  const alone = currentAlone(terminal, ambientTempC);
  const allowedCurrentA = alone === null ? null : alone * loadingFactor;
  const checks = [...fitChecks(terminal, areaMm2, outerDiameterMm, leastOuterMm), currentCheck(input, allowedCurrentA)];
  const contactDropV = terminal.contactOhm === undefined ? null : currentA * terminal.contactOhm;
  if (dropLimitV !== undefined) {
    checks.push(
      makeCheck({
        name: 'drop over the contact',
        value: contactDropV,
        limit: dropLimitV,
        unit: 'V',
        sense: 'atMost',
        source: 'given-by-caller',
        sourceStatus: terminal.status,
        ...(contactDropV === null ? { because: 'the resistance of this contact is not known' } : {}),
      }),
    );
  }
  if (matingPlating !== undefined) checks.push(platingCheck(terminal.plating, matingPlating));
  return {
    ok: checks.every((check) => check.ok),
    allowedCurrentA,
    loadingFactor,
    contactDropV,
    contactLossW: contactDropV === null ? null : contactDropV * currentA,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

function needTerminal(terminal: Terminal): void {
  const fn = 'checkTerminal';
  if (typeof terminal !== 'object' || terminal === null) {
    throw new InputError(fn, 'terminal', terminal === undefined ? 'missing' : 'object', terminal, 'must be a terminal');
  }
  needAbove(fn, 'terminal.areaLeastMm2', terminal.areaLeastMm2);
  needAtLeast(fn, 'terminal.areaMostMm2', terminal.areaMostMm2, terminal.areaLeastMm2);
  needAbove(fn, 'terminal.ratedCurrentA', terminal.ratedCurrentA);
  const { insulationLeastMm, insulationMostMm, contactOhm, plating, derating } = terminal;
  if (insulationLeastMm !== undefined) needAbove(fn, 'terminal.insulationLeastMm', insulationLeastMm);
  if (insulationMostMm !== undefined)
    needAtLeast(fn, 'terminal.insulationMostMm', insulationMostMm, insulationLeastMm ?? 0);
  if (contactOhm !== undefined) needAtLeast(fn, 'terminal.contactOhm', contactOhm);
  if (plating !== undefined) needOneOf(fn, 'terminal.plating', plating, PLATINGS);
  if (derating !== undefined) needDerating(derating);
}

function needDerating(derating: ContactDerating): void {
  const fn = 'checkTerminal';
  needOneOf(fn, 'terminal.derating.kind', derating.kind, ['points', 'rise']);
  if (derating.kind === 'rise') {
    needAbove(fn, 'terminal.derating.ratedRiseK', derating.ratedRiseK);
    needTempC(fn, 'terminal.derating.maxTempC', derating.maxTempC);
    needBetween(fn, 'terminal.derating.reductionFraction', derating.reductionFraction, 0.01, 1);
    return;
  }
  needList(fn, 'terminal.derating.points', derating.points, 1);
  derating.points.forEach(([tempC, currentA], i) => {
    needTempC(fn, `terminal.derating.points[${i}]`, tempC);
    needAtLeast(fn, `terminal.derating.points[${i}]`, currentA);
    const [tempBefore, currentBefore] = derating.points[i - 1] ?? [-Infinity, Infinity];
    if (!(tempC > tempBefore && currentA <= currentBefore)) {
      throw new InputError(
        fn,
        `terminal.derating.points[${i}]`,
        'order',
        tempC,
        'must be hotter than the one before, with no more current',
      );
    }
  });
}

/** Current in A of a contact alone in surroundings of a temperature, or null where its data do not reach. */
function currentAlone(terminal: Terminal, ambientTempC: number): number | null {
  const { derating, ratedCurrentA } = terminal;
  if (derating === undefined) return ambientTempC <= 25 ? ratedCurrentA : null;
  if (derating.kind === 'rise') {
    const { ratedRiseK, maxTempC, reductionFraction } = derating;
    return pinCurrent({ ratedCurrentA, ratedRiseK, maxTempC, ambientTempC, reductionFraction, loadingFactor: 1 })
      .currentA;
  }
  const after = derating.points.findIndex(([tempC]) => tempC >= ambientTempC);
  if (after < 0) return null;
  const [hotC, hotA] = derating.points[after] as readonly [number, number];
  const before = derating.points[after - 1];
  if (before === undefined) return Math.min(ratedCurrentA, hotA);
  const [coldC, coldA] = before;
  const share = (ambientTempC - coldC) / (hotC - coldC);
  return Math.min(ratedCurrentA, Math.sqrt(coldA * coldA + share * (hotA * hotA - coldA * coldA)));
}

function fitChecks(terminal: Terminal, areaMm2: number, largestMm: number, leastMm: number): Check[] {
  const from = { source: terminal.source ?? 'given-by-caller', sourceStatus: terminal.status } as const;
  const { areaLeastMm2, areaMostMm2, insulationLeastMm, insulationMostMm } = terminal;
  const checks = [
    makeCheck({
      ...from,
      name: 'conductor fills the crimp',
      value: areaMm2,
      limit: areaLeastMm2,
      unit: 'mm²',
      sense: 'atLeast',
    }),
    makeCheck({
      ...from,
      name: 'conductor goes into the crimp',
      value: areaMm2,
      limit: areaMostMm2,
      unit: 'mm²',
      sense: 'atMost',
    }),
  ];
  if (insulationLeastMm !== undefined) {
    checks.push(
      makeCheck({
        ...from,
        name: 'seal closes on the insulation',
        value: leastMm,
        limit: insulationLeastMm,
        unit: 'mm',
        sense: 'atLeast',
      }),
    );
  }
  if (insulationMostMm !== undefined) {
    checks.push(
      makeCheck({
        ...from,
        name: 'insulation goes into the seal',
        value: largestMm,
        limit: insulationMostMm,
        unit: 'mm',
        sense: 'atMost',
      }),
    );
  }
  return checks;
}

function currentCheck({ terminal, currentA, ambientTempC }: CheckTerminalInput, allowedA: number | null): Check {
  const status: SourceStatus = terminal.derating?.kind === 'rise' ? 'memory' : terminal.status;
  return makeCheck({
    name: 'current of the contact',
    value: currentA,
    limit: allowedA,
    unit: 'A',
    sense: 'atMost',
    source: terminal.derating?.kind === 'rise' ? 'iec-60512-5-2' : (terminal.source ?? 'given-by-caller'),
    sourceStatus: status,
    ...(allowedA === null ? { because: `no figure tells what this contact may carry at ${ambientTempC} °C` } : {}),
  });
}

function platingCheck(own: Plating | undefined, mating: Plating): Check {
  const same = own === mating;
  return makeCheck({
    name: 'platings of the pair',
    value: null,
    limit: null,
    unit: '',
    sense: 'atMost',
    source: 'plating-practice',
    sourceStatus: 'common-practice',
    okWithoutNumber: same,
    because: same
      ? `${mating} on ${mating}`
      : own === undefined
        ? 'the plating of this terminal is not known'
        : `${own} on ${mating}: unlike platings fret and corrode where they touch`,
  });
}

import { type Check, makeCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needList } from '../error/guard.js';
import type { CrankingBudget } from '../table/index.js';
import type { CrankingRole } from './cranking-part.js';
import { isMotor } from './cranking-starter.js';
import type { CrankingCircuitInput, CrankingMoment } from './cranking-type.js';

/** The limit of a kind of part in one set; null where the set says nothing. */
export function limitOf(budget: CrankingBudget, role: CrankingRole | 'battery'): number | null {
  if (role === 'connection') return budget.connectionV;
  if (role === 'cable') return budget.cableV;
  return role === 'contact' ? budget.contactV : null;
}

/** The tightest limit of a kind of part among the sets, and whose it is. */
export function tightestLimit(
  budgets: readonly CrankingBudget[],
  role: CrankingRole | 'battery',
): { readonly limitV: number; readonly budget: CrankingBudget } | null {
  let found: { limitV: number; budget: CrankingBudget } | null = null;
  for (const budget of budgets) {
    const limitV = limitOf(budget, role);
    if (limitV !== null && (found === null || limitV < found.limitV)) found = { limitV, budget };
  }
  return found;
}

export function needBudgets(fn: string, budgets: readonly CrankingBudget[]): void {
  needList(fn, 'budgets', budgets, 1);
  budgets.forEach((budget, i) => {
    if (typeof budget === 'object' && budget !== null && 'totalV' in budget) return;
    const rule = budget === undefined || budget === null ? 'missing' : 'object';
    const hint = 'import one, such as crankingBudgetSides';
    throw new InputError(fn, `budgets[${i}]`, rule, budget, 'must be a set of limits while cranking', hint);
  });
}

/** Volts lost that the sets are held against. */
export interface CrankingLosses {
  readonly parts: readonly { readonly name: string; readonly role: CrankingRole | 'battery'; readonly dropV: number }[];
  readonly positiveV: number;
  readonly negativeV: number;
}

/** Every limit of every set: part by part, side by side, and in all. */
export function budgetChecks(budgets: readonly CrankingBudget[], losses: CrankingLosses): Check[] {
  const { parts, positiveV, negativeV } = losses;
  return budgets.flatMap((budget) => {
    const limits: (readonly [string, number, number | null])[] = [
      ...parts.map(({ name, role, dropV }) => [name, dropV, limitOf(budget, role)] as const),
      ['positive side', positiveV, budget.positiveV],
      ['ground side', negativeV, budget.negativeV],
      ['from post to post', positiveV + negativeV, budget.totalV],
    ];
    return limits.flatMap(([name, value, limit]) =>
      limit === null
        ? []
        : [
            makeCheck({
              name: `${name} (${budget.title})`,
              value,
              limit,
              unit: 'V',
              sense: 'atMost',
              source: budget.source,
              sourceStatus: budget.status,
            }),
          ],
    );
  });
}

/** What the caller asks for: volts at the controller, enough current, speed of the engine. */
export function ownChecks(
  { controller, starter, leastEngineRpm }: CrankingCircuitInput,
  now: CrankingMoment,
  first: CrankingMoment | null,
  engineRpm: number | null,
): Check[] {
  const own = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks: Check[] = [];
  const least = (name: string, value: number | null, limit: number, unit = 'V'): void => {
    const because = value === null ? { because: 'the first moment needs a starter by its bench test' } : {};
    checks.push(makeCheck({ name, value, limit, unit, sense: 'atLeast', ...own, ...because }));
  };
  if (controller !== null && now.controllerV !== null) {
    least('controller while cranking', now.controllerV, controller.leastV);
    if (controller.firstLeastV !== null)
      least('controller in the first moment', first?.controllerV ?? null, controller.firstLeastV);
  }
  if (isMotor(starter) && first !== null) {
    least('current that the circuit gives a starter held fast', first.currentA, starter.crankingA, 'A');
  }
  if (leastEngineRpm !== undefined && engineRpm !== null)
    least('speed of the engine', engineRpm, leastEngineRpm, 'rpm');
  return checks;
}

import { formatQuantity } from '@loomwright/worked/quantity';
import type { LoomPlan } from '../loom/plan-type.js';
import type { Sheet, SheetTable } from './type.js';
import { SEVERITY } from './words.js';

const TITLE = { fail: 'Not met: to be mended', warn: 'To be looked at', note: 'Notes' } as const;

/** What the plan found, worst first: nobody should build from the other sheets without this one. */
export function findingsSheet(plan: LoomPlan): Sheet {
  const tables = (['fail', 'warn', 'note'] as const).flatMap((severity): SheetTable[] => {
    const findings = plan.findings.filter((finding) => finding.severity === severity);
    if (findings.length === 0) return [];
    return [
      {
        title: `${TITLE[severity]} (${findings.length})`,
        file: 'findings',
        note: null,
        columns: [
          { key: 'severity', head: 'Kind', kind: 'text', dataOnly: true },
          { key: 'about', head: 'About', kind: 'text', share: 15 },
          { key: 'message', head: 'What', kind: 'text', under: 'rule', underHead: 'Rule', share: 42 },
          { key: 'margin', head: 'Margin', kind: 'text', share: 11 },
          { key: 'cure', head: 'Cure', kind: 'text', share: 26 },
          { key: 'done', head: 'Seen', kind: 'tick', share: 6 },
        ],
        rows: findings.map(({ rule, about, message, marginFraction, cure }) => ({
          severity: SEVERITY[severity],
          about: about.name,
          message,
          rule: rule.replaceAll('-', ' '),
          margin: marginText(marginFraction),
          cure: cure ?? '',
        })),
        foot: [],
      },
    ];
  });
  return {
    key: 'findings',
    title: 'Findings',
    lead: 'Every limit that is not met, and what the plan wants to be known before anything is cut.',
    landscape: false,
    tables,
    cautions: ['local-code', 'isolator'],
  };
}

/** Room left or lacking, as a share of the limit; a shortage is rounded up, room down. */
export function marginText(marginFraction: number | null): string {
  if (marginFraction === null) return '';
  const lacks = marginFraction < 0;
  const share = formatQuantity(Math.abs(marginFraction), 'fraction', { decimals: 0, round: lacks ? 'up' : 'down' });
  return lacks ? `${share} short` : `${share} left`;
}

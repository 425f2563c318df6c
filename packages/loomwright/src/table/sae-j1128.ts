import type { ConductorTable } from './type.js';

/**
 * SAE J1128 primary and J1127 battery cable: minimum area, hence the resistance of annealed copper of that area.
 * From memory. The stranding adds to it.
 * @source sae-j1128; sae-j1127
 */
export const saeJ1128: ConductorTable = {
  kind: 'table',
  key: 'sae-j1128',
  source: 'sae-j1128',
  status: 'memory',
  place: 'J1128 to No. 8 and J1127 from No. 6, minimum circular mils, from memory; the No. 6 figure is doubtful',
  sizes: 'sae',
  metal: 'copper',
  ratedTempC: 20,
  prints: 'circular-mils',
  rows: [
    ['18', 1537],
    ['16', 2336],
    ['14', 3702],
    ['12', 5833],
    ['10', 9343],
    ['8', 14810],
    ['6', 25910],
    ['4', 37360],
    ['2', 62450],
    ['1', 77790],
    ['1/0', 98980],
    ['2/0', 125100],
    ['3/0', 158600],
    ['4/0', 205500],
  ],
};

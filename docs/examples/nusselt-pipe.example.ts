import { nusseltHorizontalCylinderCard } from '@loomwright/worked/card';
import { defineExample } from './worked-example.js';

export default defineExample({
  problem:
    'A level hot-water pipe of 8 cm lies in air of 20 °C, its surface at 70 °C. The film at 45 °C gives a Rayleigh number of 1.869 million and a Prandtl number of 0.7241. How well does the air cool it?',
  source: 'cengel-heat-transfer',
  place: 'example 9-1',
  status: 'published',
  card: nusseltHorizontalCylinderCard,
  values: { rayleigh: 1.869e6, prandtl: 0.7241, convection: 'churchill-chu' },
  prints: { nusselt: '17.40' },
});

export {
  chart,
  type ChartAxis,
  type ChartBand,
  type ChartLimit,
  type ChartPlace,
  type ChartSeries,
  type ChartSpec,
  chartTable,
} from './chart.js';

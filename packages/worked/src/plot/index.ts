export {
  chart,
  type ChartAxis,
  type ChartBand,
  type ChartLimit,
  type ChartPlace,
  type ChartSeries,
  type ChartSpec,
  chartTable,
  type PlotParts,
} from './chart.js';
export { timeCurrent } from './time-current.js';

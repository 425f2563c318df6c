// Only the parts of Observable Plot that our charts draw with, so that a page does not carry the rest.
export { areaY, axisX, axisY, dot, gridX, gridY, line, plot, rect, ruleX, ruleY, text } from '@observablehq/plot';

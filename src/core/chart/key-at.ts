import type { BarKey, Chart } from './chart';

/** The key in force at a bar: its section's, or else the chart's. */
export const keyAt = ({ bars, tonic, mode }: Chart, bar: number): BarKey => bars[bar]?.key ?? { tonic, mode };

import type { Chart } from '../chart/chart';
import { chartOfBars } from '../chart/excerpt';

/**
 * The whole chorus being heard: the form in its key, with the bars as this chorus has them (its own turnaround, the
 * close of a last one). @param heard the bars of the section, in the form's key. @param from the bar of the form it
 * begins with.
 */
export const heardChart = (form: Chart, heard: Chart, from: number): Chart =>
  heard.key === form.key
    ? chartOfBars(
        form,
        form.bars.map((own, i) => heard.bars[i - from] ?? own),
      )
    : form;

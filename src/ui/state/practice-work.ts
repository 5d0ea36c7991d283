/** What works lines and calls out: fetched after the page is first drawn. */
export { onHarp } from '../../core/phrase/phrase';
export { lineFor, tradingFor } from '../../core/song/leads';

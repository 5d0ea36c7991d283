import { BandTurnSign } from '../chart/band-turn-sign';
import { TradeResult } from '../chart/trade-result';
import { TurnSign } from '../chart/turn-sign';
import { WarmUpSign } from '../chart/warm-up-sign';
import { Guarded } from '../controls/guarded';

/** Whose turn it is, and what a warm-up asks for: the same signs as on the stand. */
export const StageSign = () => (
  <div className="stage-sign">
    <Guarded part="The sign for the band’s turn">
      <BandTurnSign />
    </Guarded>
    <Guarded part="The sign for your turn">
      <TurnSign />
    </Guarded>
    <Guarded part="What came of your answer">
      <TradeResult />
    </Guarded>
    <Guarded part="The warm-up">
      <WarmUpSign />
    </Guarded>
  </div>
);

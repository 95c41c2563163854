import { shortages } from '../../../../../shared/stock/kit.ts';
import { to } from '../../core/router.ts';
import { useWords } from '../../core/words.ts';
import { useStock } from './stockAnswer.ts';

/** Always a way to the stock; a notice above it while a shelf asks for something. What cannot be read now says nothing. */
export function StockLine() {
  const words = useWords();
  const stock = useStock();
  const found = stock.value ? shortages(stock.value) : null;
  const asks = found !== null && found.negative + found.short + found.unknown > 0;
  return (
    <div class={asks ? 'notice' : undefined}>
      {asks && <p>{words.t('stock.notice', { ...found })}</p>}
      <p>
        <a class="row-link" href={to(['stock'])}>
          {words.t('stock.link')}
        </a>
      </p>
    </div>
  );
}

import type { Shelf, Stock, StockedPart } from '../../../../../shared/stock/fold.ts';
import { nameKey } from '../../../../../shared/stock/names.ts';
import { sayQuantity } from '../../../../../shared/stock/say.ts';
import { useObservable } from '../../core/observable.ts';
import { nameOf, people } from '../../core/people.ts';
import { to } from '../../core/router.ts';
import { session } from '../../core/session.ts';
import { useWords } from '../../core/words.ts';
import { Heading } from '../Heading.tsx';
import { mayWrite } from '../may.ts';
import { Story } from '../Story.tsx';
import { Unread } from '../Unread.tsx';
import { useStock } from './stockAnswer.ts';
import './stock.css';

interface OnShelf {
  readonly part: StockedPart;
  readonly shelf: Shelf;
}

const asking: readonly Shelf['standing'][] = ['negative', 'out', 'low', 'never-counted'];

const shelvesOf = ({ parts }: Stock): OnShelf[] =>
  parts.flatMap((part) => part.shelves.map((shelf) => ({ part, shelf })));

/** Every shelf and truck: what should be there by the record, what is low, and the counts behind it. */
export function StockScreen() {
  const words = useWords();
  const current = useObservable(session);
  const stock = useStock();
  return (
    <>
      <Heading title={words.t('stock.title')}>{words.t('stock.title')}</Heading>
      <p class="actions">
        {(['stock-count', 'stock-move', 'stock-minimum'] as const)
          .filter((kind) => mayWrite(current, kind))
          .map((kind, index) => (
            <a key={kind} class={index === 0 ? 'button primary' : 'button'} href={to(['new', kind])}>
              {words.t(`form.title.${kind}`)}
            </a>
          ))}
      </p>
      <Unread resource={stock} />
      {stock.value &&
        (stock.value.parts.length === 0 ? (
          <p>{words.t('stock.empty')}</p>
        ) : (
          <Shelves stock={stock.value} mayCount={mayWrite(current, 'stock-count')} />
        ))}
      {stock.value && stock.value.history.length > 0 && (
        <section>
          <h2>{words.t('stock.records')}</h2>
          <Story history={stock.value.history} from={['stock', 'all']} />
        </section>
      )}
    </>
  );
}

function Shelves({ stock, mayCount }: { readonly stock: Stock; readonly mayCount: boolean }) {
  const words = useWords();
  const all = shelvesOf(stock);
  const urgent = asking.flatMap((standing) => all.filter(({ shelf }) => shelf.standing === standing));
  const places = [...Map.groupBy(all, ({ shelf }) => nameKey(shelf.place))];
  return (
    <>
      {stock.parts
        .filter(({ unplaced, onHand }) => unplaced > 0 && onHand !== null)
        .map(({ partNumber, unplaced }) => (
          <p class="notice" key={partNumber}>
            {words.t('stock.unplaced', { quantity: sayQuantity(unplaced, words.locale), part: partNumber })}
          </p>
        ))}
      <section>
        <h2>{words.t('stock.low-first')}</h2>
        {urgent.length === 0 ? (
          <p>{words.t('stock.nothing-low')}</p>
        ) : (
          <ul class="plain-list lines">
            {urgent.map((each) => (
              <ShelfRow key={`${each.part.partNumber} ${each.shelf.place}`} {...each} named />
            ))}
          </ul>
        )}
      </section>
      {places.map(([key, here]) => (
        <section key={key}>
          <h2>{here[0]?.shelf.place}</h2>
          <ul class="plain-list lines">
            {here.map((each) => (
              <ShelfRow key={each.part.partNumber} {...each} />
            ))}
          </ul>
          {mayCount && (
            <p>
              <a class="button" href={to(['new', 'stock-count'], { place: here[0]?.shelf.place ?? null })}>
                {words.t('stock.count-place')}
                <span class="visually-hidden"> {here[0]?.shelf.place}</span>
              </a>
            </p>
          )}
        </section>
      ))}
    </>
  );
}

function ShelfRow({ part, shelf, named = false }: OnShelf & { readonly named?: boolean }) {
  const words = useWords();
  const { partNumber, description } = part;
  const { standing, quantity, minimum } = shelf;
  const wrong = standing === 'negative' || standing === 'out' || standing === 'low';
  const amount = (value: number): string => sayQuantity(value, words.locale);
  return (
    <li class="shelf">
      <p>
        <strong>{partNumber}</strong>
        {description !== null && ` ${description}`}
        {named && <span class="place"> · {shelf.place}</span>}
      </p>
      <p class="shelf-standing">
        {quantity !== null && <strong class="shelf-quantity">{amount(quantity)}</strong>}
        <span class={wrong ? 'tag out' : 'tag'}>{words.t(`stock.standing.${standing}`)}</span>
        {minimum !== null && <span>{words.t('stock.minimum-of', { minimum: amount(minimum) })}</span>}
      </p>
      {standing === 'negative' && <p class="strong">{words.t('stock.negative')}</p>}
      <Behind shelf={shelf} />
    </li>
  );
}

/** What the figure comes from: the count, and what came and went since. */
function Behind({ shelf }: { readonly shelf: Shelf }) {
  const words = useWords();
  useObservable(people);
  const { counted, inSince, outSince, usedSince } = shelf;
  const moves = { inSince, outSince, usedSince };
  return (
    <p class="small soft">
      {counted === null
        ? words.t('stock.never', moves)
        : `${words.t('stock.counted', {
            counted: sayQuantity(counted.quantity, words.locale),
            when: words.when(counted.at),
            who: nameOf(counted.byWorkerId),
          })}${words.t('stock.since', moves)}.`}
    </p>
  );
}

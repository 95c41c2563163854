import type { Hydrant } from '../../../../../shared/inventory/hydrant.ts';
import { kitOnShelf, type KitLine, type KitOnShelf } from '../../../../../shared/stock/kit.ts';
import { sayLubricant, sayQuantity, sayWrenchToBring } from '../../../../../shared/stock/say.ts';
import type { BodyOf } from '../../../../../shared/submissions/submission.ts';
import { formatQuantity } from '../../../../../shared/units/format.ts';
import { useModels } from '../../core/records.ts';
import { to } from '../../core/router.ts';
import { useWords, type Wording } from '../../core/words.ts';
import { Unread } from '../Unread.tsx';
import { useStock } from './stockAnswer.ts';
import './stock.css';

type Model = BodyOf<'hydrant-model'>;

/** The card "what to bring". It says what is not known as plainly as what is. */
export function KitPart({ hydrant }: { readonly hydrant: Hydrant }) {
  const words = useWords();
  const models = useModels();
  const { modelId } = hydrant;
  const model = models.value?.models.find((one) => one.modelId === modelId) ?? null;
  return (
    <section class="kit">
      <h2>{model ? words.t('kit.title-model', { model: model.name }) : words.t('kit.title')}</h2>
      {modelId === null ? (
        <p>{words.t('kit.no-model-named')}</p>
      ) : model ? (
        <Bring model={model} hydrant={hydrant} />
      ) : models.value ? (
        <p>{words.t('kit.model-unknown', { modelId })}</p>
      ) : (
        <Unread resource={models} />
      )}
    </section>
  );
}

function Bring({ model, hydrant }: { readonly model: Model; readonly hydrant: Hydrant }) {
  const words = useWords();
  const { wrenches = [], lubricants = [] } = model;
  return (
    <>
      <Parts model={model} />
      <Lines title={words.t('kit.wrenches')} lines={wrenches.map((each) => sayWrenchToBring(each, words))} />
      <Lines title={words.t('kit.lubricants')} lines={lubricants.map((each) => sayLubricant(each, words))} />
      <p>{words.t('kit.opens', { opens: model.opens })}</p>
      <Bury model={model} hydrant={hydrant} />
      <p class="small soft">
        {model.manual === null ? words.t('kit.manual-none') : words.t('kit.manual', { manual: model.manual })}
      </p>
    </>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

/** A hydrant whose bury lies outside what its model is made for has one of the two written down wrong. */
function Bury({ model, hydrant }: { readonly model: Model; readonly hydrant: Hydrant }) {
  const words = useWords();
  const { buryDepth } = model;
  if (!buryDepth) return null;
  const ft = (value: number): string => formatQuantity(value, 'ft', words);
  const { fromFt, toFt } = buryDepth;
  const range = { from: ft(fromFt), to: ft(toFt) };
  const bury = hydrant.buryDepthFt;
  return bury !== null && (bury < fromFt || bury > toFt) ? (
    <p class="notice">{words.t('kit.bury-outside', { ...range, bury: ft(bury) })}</p>
  ) : (
    <p>{words.t('kit.bury', range)}</p>
  );
}

function Parts({ model }: { readonly model: Model }) {
  const words = useWords();
  const stock = useStock();
  if (model.kitContents.length === 0)
    return (
      <>
        <h3>{words.t('kit.parts')}</h3>
        <p>{words.t('kit.no-parts')}</p>
      </>
    );
  // The kit itself is known also while the shelves are not; they are then not said to be empty.
  const kit = kitOnShelf(model.kitContents, stock.value ?? { parts: [] });
  const known = stock.value !== null;
  return (
    <>
      <h3>{words.t('kit.parts')}</h3>
      <Unread resource={stock} />
      {known ? (
        <p class={kit.standing === 'complete' ? 'strong' : 'notice'}>{sayWhole(kit, words)}</p>
      ) : (
        stock.failed && <p>{words.t('kit.stock-unread')}</p>
      )}
      <ul class="plain-list lines">
        {kit.lines.map((line) => (
          <KitRow key={line.partNumber} line={line} known={known} />
        ))}
      </ul>
      <p>
        <a class="row-link" href={to(['stock'])}>
          {words.t('stock.link')}
        </a>
      </p>
    </>
  );
}

function KitRow({ line, known }: { readonly line: KitLine; readonly known: boolean }) {
  const words = useWords();
  const { partNumber, description, needed, replaces, standing, at } = line;
  const missing = standing === 'short' || standing === 'out';
  return (
    <li>
      <p>
        <strong>{`${sayQuantity(needed, words.locale)} × ${partNumber}`}</strong> {description}
      </p>
      {replaces !== null && <p class="small soft">{words.t('kit.replaces', { what: replaces })}</p>}
      {known && (
        <p class="small">
          <span class={missing ? 'tag out' : 'tag'}>{words.t(`kit.standing.${standing}`)}</span>{' '}
          {at
            .map(({ place, quantity }) =>
              words.t('kit.at', { quantity: sayQuantity(quantity, words.locale), place }),
            )
            .join(' · ')}
        </p>
      )}
    </li>
  );
}

function sayWhole({ lines, completeAt, standing }: KitOnShelf, words: Wording): string {
  const named = (...of: readonly KitLine['standing'][]): string =>
    lines
      .filter((line) => of.includes(line.standing))
      .map(({ partNumber }) => partNumber)
      .join(', ');
  return words.t(`kit.whole.${standing}`, {
    places: completeAt.join(', '),
    parts: standing === 'incomplete' ? named('short', 'out') : named('never-counted'),
  });
}

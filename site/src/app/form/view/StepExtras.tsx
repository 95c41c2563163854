import { asksForDig, dig, tooDeepForNothing } from '../../../../../shared/procedure/ground.ts';
import type { ProcedureStep } from '../../../../../shared/procedure/steps.ts';
import { focusSoon } from '../../core/focus.ts';
import { encode } from '../encode.ts';
import { stringsOf, textOf, type Node, type Values } from '../nodes.ts';
import { fieldId, useScope } from './scope.ts';
import type { StepProps } from './stepProps.ts';

/** Which section of the form is drawn inside which step. */
const sectionOf: Readonly<Partial<Record<ProcedureStep, string>>> = {
  'locate-ticket': 'repair.locate',
  'hidden-damage-checked': 'repair.hidden',
  'trench-protected': 'repair.trench',
};

/** The section of this id, wherever it stands in the form. */
const within = (nodes: readonly Node[], id: string): readonly Node[] =>
  nodes.flatMap((node) =>
    node.type === 'section' ? (node.id === id ? node.nodes : within(node.nodes, id)) : [],
  );

/** What a step asks beside its tick: hidden damage with the way out to a dig, the locate ticket, the trench. */
export function StepExtras({
  planned: { step },
  soFar,
  level,
  changeLevel,
}: Pick<StepProps, 'planned' | 'soFar' | 'level' | 'changeLevel'>) {
  const { Fields, spec } = useScope();
  const id = sectionOf[step];
  if (id === undefined) return null;
  return (
    <div class="beside">
      <Fields nodes={within(spec.nodes, id)} values={level} base="" change={changeLevel} />
      {step === 'hidden-damage-checked' && <WayOut soFar={soFar} level={level} changeLevel={changeLevel} />}
      {step === 'trench-protected' && <TooDeep level={level} />}
    </div>
  );
}

/** A dig in place of a repair from above, proposed where what was found asks for it, taken by the crew alone. */
function WayOut({ soFar, level, changeLevel }: Pick<StepProps, 'soFar' | 'level' | 'changeLevel'>) {
  const { words } = useScope();
  const found = stringsOf(level['hiddenDamage']);
  const proposed = asksForDig.some((each) => found.includes(each));
  if (soFar.scope !== 'breakaway')
    return (
      <div class="notice">
        <p>{words.t('procedure.dig-note')}</p>
        <button type="button" class="plain" onClick={() => focusSoon(`#${fieldId('dig.locateTicket')}`)}>
          {words.t('procedure.to-ticket')}
        </button>
      </div>
    );
  if (!proposed || textOf(level['needsDig']) === 'yes') return null;
  return (
    <div class="warning" role="status">
      <p>{words.t('procedure.dig-proposed')}</p>
      <button type="button" class="primary tick" onClick={() => changeLevel({ needsDig: 'yes' })}>
        {words.t('procedure.to-dig')}
      </button>
    </div>
  );
}

function TooDeep({ level }: { readonly level: Values }) {
  const { spec, words } = useScope();
  const { body } = encode(within(spec.nodes, 'repair.trench'), level, { zone: words.zone, nullable: [] });
  const read = dig.safeParse(body['dig'] ?? {});
  return (
    <div role="status">
      {read.success && tooDeepForNothing(read.data) && <p class="warning">{words.t('procedure.too-deep')}</p>}
    </div>
  );
}

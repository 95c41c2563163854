import { hasWords } from '../../../../../shared/words/index.ts';
import { isBlank } from '../encode.ts';
import { entries, type Section, type Value } from '../nodes.ts';
import { extras } from './extras.tsx';
import { LeafField } from './LeafField.tsx';
import { ListField } from './ListField.tsx';
import type { LevelProps } from './props.ts';
import { problemsAt, useScope } from './scope.ts';

/** Draws one level of a form: its fields, lists and sections, in order. */
export function Fields({ nodes, values, base, change }: LevelProps) {
  const set = (name: string, value: Value): void => change({ ...values, [name]: value });
  return (
    <>
      {nodes.map((node, index) => {
        if (node.type === 'section')
          return node.within ? null : (
            <SectionView key={node.id} section={node} {...{ values, base, change }} />
          );
        if (node.type === 'when')
          return node.test(values) ? (
            <Fields key={index} nodes={node.nodes} {...{ values, base, change }} />
          ) : null;
        if (node.type === 'kept') return null;
        const path = base === '' ? node.name : `${base}.${node.name}`;
        if (node.type === 'list')
          return (
            <ListField
              key={node.name}
              list={node}
              path={path}
              value={values[node.name]}
              set={(value) => set(node.name, value)}
              level={values}
              changeLevel={(more) => change({ ...values, ...more })}
            />
          );
        return (
          <LeafField
            key={node.name}
            leaf={node}
            path={path}
            value={values[node.name]}
            set={(value) => set(node.name, value)}
            change={(more) => change({ ...values, ...more })}
            level={values}
          />
        );
      })}
    </>
  );
}

function SectionView({
  section,
  values,
  base,
  change,
}: Omit<LevelProps, 'nodes'> & { readonly section: Section }) {
  const { words, problems } = useScope();
  const asked = entries(section.nodes, values);
  const Extra = extras[section.id];
  const help = `section.${section.id}.help`;
  const inside = (
    <>
      {hasWords(help) && <p class="help">{words.t(help)}</p>}
      <Fields nodes={section.nodes} {...{ values, base, change }} />
      {Extra && <Extra values={values} change={change} />}
    </>
  );
  const title = words.t(`section.${section.id}`);
  if (!section.folded)
    return (
      <section class="form-section">
        <h2>{title}</h2>
        {inside}
      </section>
    );
  // Open when something stands in it already, or something in it is wrong.
  const said = asked.some((entry) =>
    entry.type === 'list' ? !isEmptyList(values[entry.name]) : !isBlank(entry, values[entry.name]),
  );
  const wrong = asked.some(({ name }) => problemsAt(problems, name, true).length > 0);
  return (
    <details class="form-section" open={said || wrong}>
      <summary>
        <h2>{title}</h2>
      </summary>
      {inside}
    </details>
  );
}

const isEmptyList = (value: Value | undefined): boolean => !Array.isArray(value) || value.length === 0;

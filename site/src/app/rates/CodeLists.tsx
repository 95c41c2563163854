import { codesIn } from '../form/specs/rateBook.ts';
import { authorityCodes, laborCodes, payRuleCodes } from '../form/specs/rateBook/parts.ts';
import type { ExtraProps } from '../form/view/props.ts';

/** The codes that stand in the draft, offered wherever one of them is asked for. */
export function CodeLists({ values }: ExtraProps) {
  const lists = [
    [authorityCodes, codesIn(values, 'authorities', 'authorityId')],
    [payRuleCodes, codesIn(values, 'payRules', 'payRulesId')],
    [laborCodes, codesIn(values, 'labor', 'laborClass')],
  ] as const;
  return (
    <>
      {lists.map(([id, codes]) => (
        <datalist key={id} id={id}>
          {[...new Set(codes)].map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
      ))}
    </>
  );
}

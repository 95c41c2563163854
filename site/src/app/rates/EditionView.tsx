import type { ComponentChildren } from 'preact';
import { groupedDollars } from '../../../../shared/costs/money.ts';
import type { RateBookEdition } from '../../../../shared/costs/rateBook.ts';
import { useWords } from '../core/words.ts';
import { describe } from '../form/describe.ts';
import type { Node } from '../form/nodes.ts';
import { rateBookSpec } from '../form/specs/rateBook.ts';
import { editionValues } from '../form/specs/rateBookBody.ts';
import { SaidList } from '../screens/Story.tsx';

/** An edition as a person reads it: tables of rates, each with its paper, and the rules in words. */
export function EditionView({ edition }: { readonly edition: RateBookEdition }) {
  const words = useWords();
  const paper = (authorityId: string): string => {
    const found = edition.authorities.find((each) => each.authorityId === authorityId);
    return found
      ? [found.title, found.edition, found.page && words.t('claim.page', { page: found.page })]
          .filter(Boolean)
          .join(', ')
      : authorityId;
  };
  const fringe = ({ fringe: own, fringeFraction }: RateBookEdition['labor'][number]): string => {
    const one = (of: { share: string } | { usdPerHour: string }): string =>
      'share' in of ? percentOf(of.share) : `${groupedDollars(`$${of.usdPerHour}`)}/h`;
    return own === undefined
      ? percentOf(fringeFraction)
      : words.t('rates.fringe-two', { regular: one(own.regular), premium: one(own.premium) });
  };
  return (
    <>
      <Section id="rate-book.authorities">
        <Table
          title={words.t('section.rate-book.authorities')}
          heads={[
            'field.rate-book.authorities.authorityId',
            'field.rates.title',
            'field.rate-book.authorities.kind',
            'field.rate-book.authorities.edition',
            'field.rate-book.authorities.page',
          ]}
          rows={edition.authorities.map((each) => [
            each.authorityId,
            each.title,
            words.t(`value.authorityKind.${each.kind}`),
            each.edition ?? '–',
            each.page ?? '–',
          ])}
        />
      </Section>
      <Section id="rate-book.labor">
        <Table
          title={words.t('field.rate-book.labor')}
          heads={[
            'field.rate-book.labor.laborClass',
            'field.rates.title',
            'field.rates.usdPerHour',
            'rates.fringe',
            'field.rate-book.payRules',
            'claim.why.authority',
          ]}
          rows={edition.labor.map((each) => [
            each.laborClass,
            each.title,
            groupedDollars(`$${each.hourlyUsd}`),
            fringe(each),
            each.payRulesId ?? '–',
            paper(each.authorityId),
          ])}
        />
        {(edition.payRules ?? []).length > 0 && <Rules edition={edition} names={['payRules']} />}
      </Section>
      <Section id="rate-book.machines">
        <Table
          title={words.t('field.rate-book.machines')}
          heads={[
            'field.rate-book.machines.machineCode',
            'field.rates.title',
            'field.rates.usd',
            'rates.holds',
            'field.rate-book.machines.standbyUsd',
            'claim.why.authority',
          ]}
          rows={edition.machines.map((each) => [
            each.machineCode,
            each.unattended === true ? `${each.title} (${words.t('rates.unattended')})` : each.title,
            `${groupedDollars(`$${each.rateUsd}`)} / ${words.t(`value.machineUnit.${each.unit}`)}`,
            (each.includes ?? []).map((held) => words.t(`value.rateHolds.${held}`)).join(', ') || '–',
            each.standbyUsd === null ? '–' : groupedDollars(`$${each.standbyUsd}`),
            [paper(each.authorityId), each.schedule?.code].filter(Boolean).join(', '),
          ])}
        />
      </Section>
      <Section id="rate-book.materials">
        <Table
          title={words.t('field.rate-book.stock')}
          heads={[
            'field.rate-book.stock.partNumber',
            'field.rates.title',
            'field.rates.usd',
            'claim.why.authority',
          ]}
          rows={edition.stock.map((each) => [
            each.partNumber,
            each.title,
            groupedDollars(`$${each.unitPriceUsd}`),
            paper(each.authorityId),
          ])}
        />
        <Rules edition={edition} names={['materialHandling', 'salesTax']} />
      </Section>
      <Section id="rate-book.water">
        <Rules edition={edition} names={['water', 'flowTest']} />
      </Section>
      <Section id="rate-book.whole">
        <Rules
          edition={edition}
          names={[
            'overheads',
            'flatTariffs',
            'jobFees',
            'minimumCharge',
            'totalRounding',
            'claimHandling',
            'rounding',
          ]}
        />
      </Section>
      <Section id="rate-book.accounts">
        <Rules edition={edition} names={['accounts']} />
      </Section>
    </>
  );
}

const percentOf = (fraction: string): string => `${Number((Number(fraction) * 100).toFixed(4))}%`;

function Section({ id, children }: { readonly id: string; readonly children: ComponentChildren }) {
  const words = useWords();
  return (
    <section>
      <h2>{words.t(`section.${id}`)}</h2>
      {children}
    </section>
  );
}

interface TableProps {
  readonly title: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

function Table({ title, heads, rows }: TableProps) {
  const words = useWords();
  if (rows.length === 0) return <p class="soft">{words.t('rates.nothing')}</p>;
  return (
    <div class="wide-table" tabIndex={0} role="group" aria-label={title}>
      <table class="rates">
        <caption class="visually-hidden">{title}</caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th scope="col" key={head}>
                {words.t(head)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([code, ...cells]) => (
            <tr key={code}>
              <th scope="row">{code}</th>
              {cells.map((cell, index) => (
                <td key={index}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Some of the edition's rules in the words of its form. */
function Rules({ edition, names }: { readonly edition: RateBookEdition; readonly names: readonly string[] }) {
  const words = useWords();
  const leaves = rateBookSpec.nodes.flatMap((node) => (node.type === 'section' ? node.nodes : []));
  const wanted = leaves.filter(
    (node): node is Extract<Node, { name: string }> =>
      'name' in node && names.includes(node.name.split('.')[0] ?? ''),
  );
  const body = readable(edition, words.zone);
  const said = describe('rate-book', wanted, body, words);
  return said.length === 0 ? <p class="soft">{words.t('rates.nothing')}</p> : <SaidList said={said} />;
}

/** The edition with the numbers that stand for choices as the text of the choice, and old water prices with their unit. */
function readable(edition: RateBookEdition, zone: string): unknown {
  const { water } = edition;
  const typed = editionValues(rateBookSpec.nodes, edition, zone);
  return {
    ...edition,
    payRules: edition.payRules && typed['payRules'] && nested(typed['payRules']),
    water:
      water !== null && 'per1000GalUsd' in water
        ? { usd: water.per1000GalUsd, per: '1000-gal', authorityId: water.authorityId }
        : water,
  };
}

/** `{'week.startsOn': '1'}` as `{week: {startsOn: '1'}}`, yes and no as they are stored. */
function nested(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(nested);
  if (value === 'yes' || value === 'no') return value === 'yes';
  if (typeof value !== 'object' || value === null) return value;
  const made: Record<string, unknown> = {};
  for (const [path, inner] of Object.entries(value)) {
    const names = path.split('.');
    const last = names.pop() ?? path;
    let at = made;
    for (const name of names) {
      at[name] ??= {};
      at = at[name] as Record<string, unknown>;
    }
    at[last] = nested(inner);
  }
  return made;
}

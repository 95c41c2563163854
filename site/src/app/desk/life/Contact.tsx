import type { ClaimContact } from '../../../../../shared/claims/contact.ts';
import { mailto } from '../../core/mailto.ts';
import { useWords } from '../../core/words.ts';

/** Whom to call or write to, with the number that they know the claim by. */
export function Contact({ contact }: { readonly contact: ClaimContact | null }) {
  const words = useWords();
  if (!contact) return null;
  const { adjuster, reference } = contact;
  const phone = adjuster?.phone ?? null;
  const email = adjuster?.email ?? null;
  const rows = [
    { key: 'adjuster', said: [adjuster?.name, adjuster?.company].filter(Boolean).join(', '), href: null },
    { key: 'phone', said: phone, href: phone === null ? null : `tel:${phone.replace(/[^+\d]/g, '')}` },
    { key: 'email', said: email, href: mailto(email) },
    { key: 'reference', said: reference, href: null },
  ].filter(({ said }) => said !== null && said !== '');
  if (rows.length === 0) return null;
  return (
    <>
      <h3>{words.t('claim.life.contact')}</h3>
      <dl class="said">
        {rows.map(({ key, said, href }) => (
          <div key={key}>
            <dt>{words.t(`field.adjuster-assigned.adjuster.${key === 'adjuster' ? 'name' : key}`)}</dt>
            <dd>{href === null ? said : <a href={href}>{said}</a>}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}

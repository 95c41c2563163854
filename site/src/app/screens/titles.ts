import type { StrikeState } from '../../../../shared/strikes/state.ts';
import type { BodyOf } from '../../../../shared/submissions/submission.ts';
import type { Wording } from '../core/words.ts';

/** Short names of things, for lists and headings. */

export function strikeTitle(
  strike: Pick<StrikeState, 'hydrantId' | 'placeDescription' | 'position'>,
  words: Wording,
): string {
  if (strike.hydrantId !== null) return strike.hydrantId;
  if (strike.placeDescription !== null) return strike.placeDescription;
  return strike.position === null
    ? words.t('title.hydrant-unknown')
    : words.t('title.at-position', {
        latitude: strike.position.latitudeDeg.toFixed(5),
        longitude: strike.position.longitudeDeg.toFixed(5),
      });
}

/** A party by what tells it apart: driver, plate, insurer. */
export function partyTitle(party: BodyOf<'party'>, words: Wording): string {
  const [vehicle] = party.vehicles;
  const known = [
    party.driver?.name,
    [vehicle?.plate, vehicle?.plateRegion].filter(Boolean).join(' '),
    party.insurer?.company,
  ].filter(Boolean);
  if (known.length > 0) return known.join(' · ');
  return words.t(party.hitAndRun === 'yes' ? 'title.party-left' : 'title.party-unknown');
}

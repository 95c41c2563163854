import type { CaptureData, Undisplayable } from './displayCopy.ts';

/** Where one photo or document may be read: what `GET /api/evidence/{sha256}` answers. */
export interface EvidenceAddress {
  /** Signed, and good for minutes: whoever has it reads these bytes. It is asked without the sign-in's token. */
  readonly url: string;
  readonly shows: 'original' | 'display-copy';
  /** Why a picture that was asked for to be shown has no display copy; null where it has one, or was not looked at yet. */
  readonly undisplayable: Undisplayable | null;
  /** What a picture that was asked for to be shown says of its capture; null where it was not read (yet) or is no picture. */
  readonly said: CaptureData | null;
}

import type { Stand, StandForm, StandPlace } from '../../../server/schemas/stand.ts';
import { bearingEntryOf, latitudeEntryOf, readBearingDeg, readLatitudeDeg } from './earth-entry.ts';
import { lengthEntryOf, readLengthMm, type TapeUnit } from './length-entry.ts';

/** A stand as it is sent: what it is, and where on earth. */
export type StandToSend = StandForm & StandPlace;

/** What the grower has said of a stand so far, as typed. */
export interface StandDraft {
  readonly name: string;
  /** What its lengths are typed in. */
  readonly tape: TapeUnit;
  readonly distance: string;
  readonly height: string;
  readonly backdrop: string;
  readonly lightSide: StandForm['lightSide'];
  readonly latitude: string;
  readonly lightBearing: string;
  readonly scaleFrom: StandForm['scaleFrom'] | null;
  readonly paper: 'A4' | 'Letter';
  readonly sheetPlace: 'backdrop' | 'bench';
  readonly plantInFront: string;
}

export const EMPTY_STAND: StandDraft = {
  name: '',
  tape: 'cm',
  distance: '',
  height: '',
  backdrop: '',
  lightSide: null,
  latitude: '',
  lightBearing: '',
  scaleFrom: null,
  paper: 'A4',
  sheetPlace: 'backdrop',
  plantInFront: '',
};

export function standDraftOf(stand: Stand, tape: TapeUnit): StandDraft {
  const inTape = (mm: number | null) => lengthEntryOf(mm, tape);
  return {
    name: stand.name,
    tape,
    distance: inTape(stand.cameraDistanceMm),
    height: inTape(stand.cameraHeightMm),
    backdrop: stand.backdrop ?? '',
    lightSide: stand.lightSide,
    latitude: latitudeEntryOf(stand.latitudeDeg),
    lightBearing: bearingEntryOf(stand.lightBearingDeg),
    scaleFrom: stand.scaleFrom,
    paper: stand.sheet?.paper ?? EMPTY_STAND.paper,
    sheetPlace: stand.sheet?.place ?? EMPTY_STAND.sheetPlace,
    plantInFront: inTape(stand.sheet?.plantInFrontMm ?? null),
  };
}

export type ReadStand =
  | { readonly ok: true; readonly form: StandToSend }
  | { readonly ok: false; readonly fields: Readonly<Record<string, string>> };

/** Reads the draft, or says beside which entry what cannot be read. */
export function readStand(draft: StandDraft): ReadStand {
  const distance = readLengthMm(
    draft.distance,
    'Give the distance as a number, for example 180 cm.',
    draft.tape,
  );
  const height = readLengthMm(draft.height, 'Give the height as a number, for example 12 cm.', draft.tape);
  const withSheet = draft.scaleFrom === 'sheet';
  const front = readLengthMm(
    withSheet ? draft.plantInFront : '',
    'Give it as a number, for example 15 cm, or 0 when the pot stands on the sheet.',
    draft.tape,
  );
  const latitude = readLatitudeDeg(draft.latitude);
  const bearing = readBearingDeg(draft.lightBearing);
  const fields: Record<string, string> = {};
  if (draft.name.trim() === '') fields.name = 'Give the stand a name, for example Shed bench.';
  if (!distance.ok) fields.cameraDistanceMm = distance.fault;
  if (!height.ok) fields.cameraHeightMm = height.fault;
  if (!latitude.ok) fields.latitudeDeg = latitude.fault;
  if (!bearing.ok) fields.lightBearingDeg = bearing.fault;
  if (!front.ok) fields.plantInFrontMm = front.fault;
  else if (withSheet && front.mm === null && draft.sheetPlace === 'backdrop') {
    fields.plantInFrontMm =
      'Measure from the sheet to the middle of the pot, for example 15 cm. A sheet that hangs behind the plant reads small by that much.';
  }
  if (!distance.ok || !height.ok || !front.ok || !latitude.ok || !bearing.ok) return { ok: false, fields };
  if (Object.keys(fields).length > 0) return { ok: false, fields };
  return {
    ok: true,
    form: {
      name: draft.name.trim(),
      lightSide: draft.lightSide,
      latitudeDeg: latitude.deg,
      lightBearingDeg: bearing.deg,
      backdrop: draft.backdrop.trim() || null,
      cameraDistanceMm: distance.mm,
      cameraHeightMm: height.mm,
      scaleFrom: draft.scaleFrom ?? 'none',
      sheet: withSheet
        ? { paper: draft.paper, place: draft.sheetPlace, plantInFrontMm: front.mm ?? 0 }
        : null,
    },
  };
}

/** Which entry of the draft each part of the stand is read from. */
const ENTRIES: Readonly<Record<keyof StandToSend, readonly (keyof StandDraft)[]>> = {
  name: ['name'],
  lightSide: ['lightSide'],
  latitudeDeg: ['latitude'],
  lightBearingDeg: ['lightBearing'],
  backdrop: ['backdrop'],
  cameraDistanceMm: ['distance'],
  cameraHeightMm: ['height'],
  scaleFrom: ['scaleFrom'],
  sheet: ['scaleFrom', 'paper', 'sheetPlace', 'plantInFront'],
};

/** Only the parts of `form` whose entries were touched: what was not meant must not make a new version. */
export function changedParts(before: StandDraft, now: StandDraft, form: StandToSend): Partial<StandToSend> {
  const touched = (part: keyof StandToSend) => ENTRIES[part].some((entry) => before[entry] !== now[entry]);
  return Object.fromEntries(
    Object.entries(form).filter(([part]) => touched(part as keyof StandToSend)),
  ) as Partial<StandToSend>;
}

import { Link, useSearchParams } from 'wouter';
import { castFilm, filmPlaces, filmSides } from '../../../core/film/cast-film.ts';
import { sideOf } from '../../../core/film/film-photo.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Days } from '../api/sittings.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { usePageWith } from '../plant/use-page-with.ts';
import { WithPlant } from '../plant/WithPlant.tsx';
import { FilmChoices } from './FilmChoices.tsx';
import { FilmDesk } from './FilmDesk.tsx';
import styles from './FilmScreen.module.css';
import { filmPhotos } from './film-photos.ts';

/** A plant's photos of many weeks in one frame: the plant grows and the camera stands still. */
export default function FilmScreen({ plantId }: { plantId: string }) {
  return <WithPlant plantId={plantId}>{(page) => <WholeLife page={page} />}</WithPlant>;
}

/** A film is of all the plant's photos. */
function WholeLife({ page: newer }: { page: PlantPage }) {
  const { page, isPending, fault } = usePageWith(newer, yearsOf(newer.earlier));
  if (fault) return <Fault fault={fault} />;
  if (isPending) return <p>Fetching the plant…</p>;
  return <OfPlant page={page} />;
}

/** A year at a time, so that the server answers others between. */
function yearsOf(earlier: PlantPage['earlier']): Days[] {
  const years = [...new Set(earlier.map(({ day }) => day.slice(0, 4)))];
  return years.map((year) => ({ from: `${year}-01-01`, to: `${year}-12-31` }));
}

function OfPlant({ page }: { page: PlantPage }) {
  const [search, setSearch] = useSearchParams();
  const { plant } = page;
  const photos = filmPhotos(page.sittings);
  const sides = filmSides(photos);
  const wanted = Number(search.get('side') ?? Number.NaN);
  const side = sides.find(({ sideDeg }) => sideDeg === wanted) ?? sides[0];
  const places = filmPlaces(photos.filter((photo) => sideOf(photo) === side?.sideDeg));
  const place = places.find((one) => nameOf(one.place) === search.get('place')) ?? places[0];
  const film = side && place ? castFilm(photos, { sideDeg: side.sideDeg, place: place.place }) : null;
  const choose = (name: 'side' | 'place', value: string) => {
    const next = new URLSearchParams(search);
    if (name === 'side') next.delete('place');
    next.set(name, value);
    setSearch(next, { replace: true });
  };

  return (
    <div className={styles.screen}>
      <header className={styles.head}>
        <div>
          <p>
            <Link href={`/plants/${plant.id}`} className={styles.back}>
              <Icon name="back" /> {plant.name}
            </Link>
          </p>
          <h1>Film</h1>
        </div>
        <FilmChoices
          sides={sides}
          side={side?.sideDeg ?? null}
          places={places.map(({ place: one, days }) => ({ name: nameOf(one), days }))}
          place={nameOf(place?.place ?? null)}
          onChoose={choose}
        />
      </header>
      {film && film.frames.length > 0 ? (
        <FilmDesk key={`${film.sideDeg} ${film.place}`} page={page} film={film} />
      ) : (
        <>
          <p>
            A film needs photos that are measured, from one camera place. There is none yet of this plant.
          </p>
          <p>
            <Link href={`/plants/${plant.id}?add-photos`} className={buttons.button}>
              <Icon name="camera" /> Add a photo
            </Link>
          </p>
        </>
      )}
    </div>
  );
}

function nameOf(place: string | null): string {
  return place ?? 'none';
}

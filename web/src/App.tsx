import { lazy, Suspense, useEffect } from 'react';
import { Link, Route, Switch, useLocation } from 'wouter';
import styles from './App.module.css';
import { followProgress } from './api/live.ts';
import { isOutside } from './api/outside.ts';
import { BenchScreen } from './bench/BenchScreen.tsx';
import { Catcher } from './parts/Catcher.tsx';
import { Icon } from './parts/Icon.tsx';
import { UndoBar } from './parts/UndoBar.tsx';
import { Wordmark } from './parts/Wordmark.tsx';
import { areWaiting } from './photos/waiting-flag.ts';

/** How long the first screen has phone and network to itself, when no photo waits. */
const FIRST_VIEW_MS = 5_000;

/** What is not needed for the first screen, and again when the server is back. */
const afterFirstView = () => void import('./after-first-view.ts').then(({ start }) => start());

const DoorScreen = lazy(() => import('./phones/DoorScreen.tsx'));
const PhonesScreen = lazy(() => import('./phones/PhonesScreen.tsx'));
const PlantScreen = lazy(() => import('./plant/PlantScreen.tsx'));
const CutListScreen = lazy(() => import('./cut-list/CutListScreen.tsx'));
const TurnedScreen = lazy(() => import('./taking/TurnedScreen.tsx'));
const AddPlantScreen = lazy(() => import('./add-plant/AddPlantScreen.tsx'));
const StandsScreen = lazy(() => import('./stand/StandsScreen.tsx'));
const StandScreen = lazy(() => import('./stand/StandScreen.tsx'));
const SetUpScreen = lazy(() => import('./stand/SetUpScreen.tsx'));
const SheetScreen = lazy(() => import('./sheet/SheetScreen.tsx'));
const CardScreen = lazy(() => import('./bench-card/CardScreen.tsx'));
const FilmScreen = lazy(() => import('./film/FilmScreen.tsx'));
const YearScreen = lazy(() => import('./year/YearScreen.tsx'));
const CalendarScreen = lazy(() => import('./calendar/CalendarScreen.tsx'));
const ShowsScreen = lazy(() => import('./shows/ShowsScreen.tsx'));
const KeepingScreen = lazy(() => import('./keeping/KeepingScreen.tsx'));
const AboutScreen = lazy(() => import('./about/AboutScreen.tsx'));

const PLACES = [
  { to: '/', words: 'Bench', icon: 'bench' },
  { to: '/plants/new', words: 'Add a plant', icon: 'add' },
  { to: '/shows', words: 'Shows', icon: 'show' },
  { to: '/calendar', words: 'Calendar', icon: 'calendar' },
  { to: '/stands', words: 'Stands', icon: 'stand' },
  { to: '/about', words: 'How and cautions', icon: 'guide' },
  // On a phone there is nothing to do there, and no room for a seventh.
  { to: '/phones', words: 'Phones', icon: 'phone', onDeskOnly: true },
] as const;

/** The app itself, or the door for a device that is not let in. */
export function App() {
  if (!isOutside.useValue()) return <House />;
  return (
    <Suspense fallback={null}>
      <DoorScreen />
    </Suspense>
  );
}

function House() {
  const [location] = useLocation();
  useEffect(() => followProgress(afterFirstView), []);
  useEffect(() => {
    const clock = setTimeout(afterFirstView, areWaiting() ? 0 : FIRST_VIEW_MS);
    return () => clearTimeout(clock);
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new place starts at its top
  useEffect(() => {
    window.scrollTo(0, 0);
  }, [location]);

  return (
    <div className={styles.house}>
      <a href="#main" className={styles.skip}>
        Skip to the content
      </a>
      <header className={styles.head}>
        <Link href="/" className={styles.name} aria-label="Rondure, to the bench">
          <Wordmark />
        </Link>
        <nav className={styles.places} aria-label="Places">
          {PLACES.map(({ to, words, icon, ...more }) => (
            <Link
              key={to}
              href={to}
              className={styles.place}
              data-on-desk-only={'onDeskOnly' in more || undefined}
              aria-current={location === to ? 'page' : undefined}
            >
              <Icon name={icon} />
              {words}
            </Link>
          ))}
        </nav>
      </header>
      <main id="main" className={styles.main} tabIndex={-1}>
        <Catcher key={location}>
          <Suspense fallback={<p>One moment…</p>}>
            <Switch>
              <Route path="/" component={BenchScreen} />
              <Route path="/plants/new" component={AddPlantScreen} />
              <Route path="/plants/:id">{({ id }) => <PlantScreen key={id} plantId={id} />}</Route>
              <Route path="/plants/:id/cut-list">{({ id }) => <CutListScreen key={id} plantId={id} />}</Route>
              <Route path="/plants/:id/card">{({ id }) => <CardScreen key={id} plantId={id} />}</Route>
              <Route path="/plants/:id/film">{({ id }) => <FilmScreen key={id} plantId={id} />}</Route>
              <Route path="/plants/:id/year">{({ id }) => <YearScreen key={id} plantId={id} />}</Route>
              <Route path="/plants/:id/turned">{({ id }) => <TurnedScreen key={id} plantId={id} />}</Route>
              <Route path="/stands" component={StandsScreen} />
              <Route path="/stands/new">{() => <SetUpScreen standId={null} />}</Route>
              <Route path="/stands/:id/set-up">{({ id }) => <SetUpScreen standId={id} />}</Route>
              <Route path="/stands/:id">{({ id }) => <StandScreen standId={id} />}</Route>
              <Route path="/stand-sheet" component={SheetScreen} />
              <Route path="/shows" component={ShowsScreen} />
              <Route path="/calendar" component={CalendarScreen} />
              <Route path="/phones" component={PhonesScreen} />
              <Route path="/keeping" component={KeepingScreen} />
              <Route path="/about" component={AboutScreen} />
              <Route>
                <h1>Nothing stands here</h1>
                <p>
                  This address leads nowhere. <Link href="/">Back to the bench</Link>
                </p>
              </Route>
            </Switch>
          </Suspense>
        </Catcher>
      </main>
      <UndoBar />
    </div>
  );
}

import { lazy, Suspense, useEffect } from 'react';
import { Link, Route, Switch, useLocation } from 'wouter';
import styles from './App.module.css';
import { followProgress } from './api/live.ts';
import { BenchScreen } from './bench/BenchScreen.tsx';
import { Catcher } from './parts/Catcher.tsx';
import { Icon } from './parts/Icon.tsx';
import { UndoBar } from './parts/UndoBar.tsx';
import { Wordmark } from './parts/Wordmark.tsx';
import { askBeforeLosing } from './photos/send-queue.ts';

const PlantScreen = lazy(() => import('./plant/PlantScreen.tsx'));
const CutListScreen = lazy(() => import('./cut-list/CutListScreen.tsx'));
const TurnedScreen = lazy(() => import('./taking/TurnedScreen.tsx'));
const AddPlantScreen = lazy(() => import('./add-plant/AddPlantScreen.tsx'));
const StandsScreen = lazy(() => import('./stand/StandsScreen.tsx'));
const StandScreen = lazy(() => import('./stand/StandScreen.tsx'));
const SetUpScreen = lazy(() => import('./stand/SetUpScreen.tsx'));
const SheetScreen = lazy(() => import('./sheet/SheetScreen.tsx'));
const FilmScreen = lazy(() => import('./film/FilmScreen.tsx'));
const YearScreen = lazy(() => import('./year/YearScreen.tsx'));
const CalendarScreen = lazy(() => import('./calendar/CalendarScreen.tsx'));
const ShowsScreen = lazy(() => import('./shows/ShowsScreen.tsx'));
const AboutScreen = lazy(() => import('./about/AboutScreen.tsx'));

const PLACES = [
  { to: '/', words: 'Bench', icon: 'bench' },
  { to: '/plants/new', words: 'Add a plant', icon: 'add' },
  { to: '/shows', words: 'Shows', icon: 'show' },
  { to: '/calendar', words: 'Calendar', icon: 'calendar' },
  { to: '/stands', words: 'Stands', icon: 'stand' },
  { to: '/about', words: 'How and cautions', icon: 'guide' },
] as const;

export function App() {
  const [location] = useLocation();
  useEffect(followProgress, []);
  useEffect(askBeforeLosing, []);
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
          {PLACES.map(({ to, words, icon }) => (
            <Link
              key={to}
              href={to}
              className={styles.place}
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

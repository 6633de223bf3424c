/** Every screen of the app with its address, in the order of a walk; those of a plant show the one named. */
export function allScreens(plantId: string): Readonly<Record<string, string>> {
  return {
    bench: '/',
    plant: `/plants/${plantId}`,
    'cut list': `/plants/${plantId}/cut-list`,
    'bench card': `/plants/${plantId}/card`,
    film: `/plants/${plantId}/film`,
    year: `/plants/${plantId}/year`,
    'turned photos': `/plants/${plantId}/turned`,
    'add a plant': '/plants/new',
    shows: '/shows',
    calendar: '/calendar',
    stands: '/stands',
    'set up a stand': '/stands/new',
    'stand sheet': '/stand-sheet',
    phones: '/phones',
    about: '/about',
  };
}

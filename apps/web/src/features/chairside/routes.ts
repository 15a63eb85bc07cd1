import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choice, id, searchOf, text } from '../../app/search.js';
import { needs, shellRoute } from '../../app/shell-route.js';
import { resumeOutbox } from './offline/resume.js';

const chairsideRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/chairside',
  validateSearch: searchOf({
    chart: text(60),
    teeth: choice('primary'),
    numbers: choice('iso', 'universal'),
    booked: id,
    booking: id,
  }),
  ...needs('visits.post'),
  component: lazyRouteComponent(() => import('./index.js'), 'ChairsideScreen'),
});

// Visits that wait on this device are sent from whatever screen is opened first.
resumeOutbox();

export const chairsideRoutes = [chairsideRoute] as const;

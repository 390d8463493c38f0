import type { ServiceEvent } from '#lib/service/events/event.ts'

/** Whether nothing happens in a service any more after an event, but for a ticket that is paid. */
export const endsService = ({ type }: Pick<ServiceEvent, 'type'>): boolean =>
  type === 'serviceClosed' || type === 'planDropped'

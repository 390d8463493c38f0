import { useCrew } from '#components/live/crew.tsx'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'

/** The newest forecast of the service that is followed; null until the server has sent one. */
export const useForecast = (): StationForecast | null => useCrew((view) => view.forecast)

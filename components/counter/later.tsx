import { type ComponentType, lazy, useState } from 'react'

/** A part of a screen that its first load leaves out. */
export interface Later<Props> {
  /** The part, once it was fetched. */
  readonly there: () => ComponentType<Props> | null
  readonly Waiting: ComponentType<{ readonly given: Props }>
  /** Fetches it, so that it is drawn at once from then on. @throws where the network dropped */
  readonly fetch: () => Promise<unknown>
}

export const later = <Props extends object>(
  load: () => Promise<ComponentType<Props>>,
): Later<Props> => {
  let fetched: ComponentType<Props> | null = null
  const fetch = async (): Promise<ComponentType<Props>> => {
    fetched = await load()
    return fetched
  }
  const Waiting: Later<Props>['Waiting'] = lazy(async () => {
    const Fetched = await fetch()
    return { default: ({ given }) => <Fetched {...given} /> }
  })
  return { there: () => fetched, fetch, Waiting }
}

/** Drawn without waiting once it was fetched; until then its nearest Suspense waits for it. */
export function LaterPart<Props extends object>({
  of: { there, Waiting },
  given,
}: {
  readonly of: Later<Props>
  readonly given: Props
}) {
  const [Known] = useState(there)
  return Known ? <Known {...given} /> : <Waiting given={given} />
}

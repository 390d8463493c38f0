import { createContext, type ReactNode, useContext } from 'react'
import type { DraftNow } from '#components/menu/draft/use-draft.ts'
import type { Entity, EntityKey } from '#lib/editor/draft.ts'

export type Section = 'line' | 'items' | 'touch' | 'house' | 'publish'

/** What is open: a section, and in it the row that its panel is about; null where none is. */
export interface Place {
  readonly section: Section
  readonly about: EntityKey | null
}

interface MenuNow extends DraftNow {
  readonly place: Place
  readonly go: (section: Section, about?: EntityKey | null) => void
  /** Opens the label of an ingredient. */
  readonly onLabel: (ingredient: string) => void
  /** To where a problem can be mended. */
  readonly goTo: (entity: Entity, id: string) => void
}

const Context = createContext<MenuNow | null>(null)

export function MenuProvider({
  now,
  children,
}: {
  readonly now: MenuNow
  readonly children: ReactNode
}) {
  return <Context value={now}>{children}</Context>
}

/** The station that is being set up. @throws outside of its provider */
export const useMenu = (): MenuNow => {
  const now = useContext(Context)
  if (now === null) throw new Error('a part of the set-up is outside of its station')
  return now
}

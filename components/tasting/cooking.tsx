import { CardToCook } from '#components/tasting/card-to-cook.tsx'
import styles from '#components/tasting/tasting.module.css'
import type { TastingAct } from '#components/tasting/use-tastings.ts'
import { useTastingWords } from '#components/tasting/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { componentOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { toCookOn } from '#lib/tasting/heated.ts'
import type { Tasting } from '#lib/tasting/tasting.ts'
import type { ComponentTasted } from '#lib/tasting/who-can-taste.ts'

interface CookingProps {
  readonly station: StationDocument
  readonly tasting: Tasting
  readonly who: readonly ComponentTasted[]
  readonly acting: TastingAct
  /** A food is to be read. */
  readonly onRead: (component: string) => void
}

/** The cards to cook by; ready only where all that is cooked was read. */
export function Cooking({ station, tasting, who, acting, onRead }: CookingProps) {
  const words = useTastingWords()
  const components = who.map(({ component }) => component)
  const left = toCookOn(station, { ...tasting, components })
  const named = (is: (why: string) => boolean) =>
    left.filter(({ why }) => is(why)).map((one) => componentOf(station, one.component).name)
  const unread = named((why) => why === 'no-reading')
  const low = named((why) => why !== 'no-reading')
  const lacks =
    unread.length > 0 ? words.toRead(unread) : low.length > 0 ? words.toCookOn(low) : null
  return (
    <>
      <div className={styles.cards}>
        {who.map(({ component, can }) => (
          <CardToCook
            key={component}
            {...{ station, tasting, component, can }}
            onRead={() => onRead(component)}
          />
        ))}
      </div>
      <div className={styles.acts}>
        <Button
          kind="main"
          lacks={lacks}
          disabled={acting.busy}
          sub={words.readySub}
          onClick={() => void acting.act({ type: 'readyToTaste', tasting: tasting.id })}
        >
          {words.ready}
        </Button>
      </div>
    </>
  )
}

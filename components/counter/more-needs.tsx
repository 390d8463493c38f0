import styles from '#components/counter/ask.module.css'
import { NeedTile } from '#components/counter/need-tile.tsx'
import frame from '#components/counter/step.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { askTiles } from '#lib/rooms/orders/views/ask-tiles.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

interface MoreNeedsProps {
  readonly station: StationDocument
  readonly needs: readonly Need[]
  readonly kept: readonly Need[]
  readonly tap: (act: Act) => void
  readonly close: () => void
}

/** What guests tell rarely: it stands behind one tile, so that the others are large. */
export function MoreNeeds({ station, needs, kept, tap, close }: MoreNeedsProps) {
  const words = useCounterWords()
  return (
    <div className={frame.upper}>
      <div className={frame.side}>
        <Button kind="main" size="large" onClick={close}>
          {words.needs.done}
        </Button>
        <p className={styles.caution}>{words.otherNeeds}</p>
      </div>
      <div className={styles.tiles} data-rare="">
        {askTiles(station).more.map((code) => (
          <NeedTile
            key={code}
            code={code}
            need={needs.find((one) => one.code === code)}
            stays={kept.some((one) => one.code === code)}
            kinds={[]}
            tap={tap}
          />
        ))}
      </div>
    </div>
  )
}

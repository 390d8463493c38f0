import styles from '#components/counter/ask.module.css'
import shared from '#components/counter/counter.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import { askTiles } from '#lib/rooms/orders/views/ask-tiles.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { isDiet, type Need } from '#lib/station/codes/codes.ts'
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
    <div className={styles.tiles} data-more="">
      {askTiles(station).more.map((code) => {
        const need = needs.find((one) => one.code === code)
        const stays = kept.some((one) => one.code === code)
        return (
          <button
            key={code}
            type="button"
            className={styles.tile}
            data-diet={isDiet(code) || undefined}
            data-handling={need?.handling}
            aria-pressed={need !== undefined}
            onClick={() => tap({ act: 'need', code })}
          >
            <strong>{words.needTile(code)}</strong>
            {need && <small>{words.asked(code, need.handling, stays)}</small>}
          </button>
        )
      })}
      <button type="button" className={shared.main} onClick={close}>
        {words.needs.done}
      </button>
    </div>
  )
}

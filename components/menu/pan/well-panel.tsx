import { useState } from 'react'
import { About, Helped } from '#components/menu/fields/help.tsx'
import { HELD, type Held, heldOf } from '#components/menu/line/drawn.ts'
import { followSteps } from '#components/menu/line/held-in.ts'
import styles from '#components/menu/menu.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Panel } from '#components/ui/panel.tsx'
import { rowOf, rowsOf, textIn } from '#lib/editor/draft.ts'
import { newId } from '#lib/editor/ids.ts'
import type { Step } from '#lib/editor/step.ts'

/** How a well holds its food, each way with what follows from it. */
function HeldWays({
  chosen,
  onChoose,
}: {
  readonly chosen: Held | null
  readonly onChoose: (held: Held) => void
}) {
  const words = useMenuWords()
  return (
    <About of="held">
      <fieldset className={styles.ways}>
        <legend className="visually-hidden">{words.line.howHeld}</legend>
        {HELD.map((held) => (
          <Button
            key={held}
            aria-pressed={chosen === held}
            sub={words.line.heldWhy[held]}
            onClick={() => onChoose(held)}
          >
            {words.line.held[held]}
          </Button>
        ))}
      </fieldset>
    </About>
  )
}

/** A component follows its well. */
const componentsFollow = (
  draft: Parameters<typeof rowsOf>[0],
  well: string,
  held: Held,
): readonly Step[] =>
  rowsOf(draft, 'pan').flatMap(({ row }) =>
    textIn(row, 'well') === well ? followSteps(draft, textIn(row, 'component'), held) : [],
  )

/** One well: how it holds, where it stands. */
export function WellPanel({ well }: { readonly well: string }) {
  const words = useMenuWords()
  const { draft, take, go } = useMenu()
  const wells = rowsOf(draft, 'well')
  const at = wells.findIndex(({ id }) => id === well)
  const held = heldOf(textIn(rowOf(draft, 'well', well), 'held'))
  const isBare = !rowsOf(draft, 'pan').some(({ row }) => textIn(row, 'well') === well)
  const move = (by: -1 | 1) =>
    take({
      do: 'move',
      entity: 'well',
      id: well,
      before: by === -1 ? (wells[at - 1]?.id ?? null) : (wells[at + 2]?.id ?? null),
    })
  const title = words.line.well(at + 1, held)
  return (
    <Panel
      className={styles.panel ?? ''}
      title={title}
      label={title}
      back={words.screen.close}
      onBack={() => go('line')}
    >
      <Helped
        acts={
          <>
            <Button kind="quiet" disabled={at <= 0} onClick={() => move(-1)}>
              {words.line.wellLeft}
            </Button>
            <Button kind="quiet" disabled={at >= wells.length - 1} onClick={() => move(1)}>
              {words.line.wellRight}
            </Button>
            <Button
              kind="no"
              lacks={isBare ? null : words.line.wellNotBare}
              onClick={() => {
                take({ do: 'remove', entity: 'well', id: well })
                go('line')
              }}
            >
              {words.line.takeWell}
            </Button>
          </>
        }
      >
        <HeldWays
          chosen={held}
          onChoose={(next) =>
            take(
              { do: 'put', entity: 'well', id: well, fields: { held: next } },
              ...componentsFollow(draft, well, next),
            )
          }
        />
      </Helped>
    </Panel>
  )
}

const NONE: Readonly<Record<Held, number>> = { hot: 0, cold: 0, dry: 0, time: 0 }
const MOST_WELLS = 12

/** Wells as they are counted along the counter, put in at once. */
export function AddWellsPanel({
  isFirst,
  onDone,
}: {
  readonly isFirst: boolean
  readonly onDone: () => void
}) {
  const words = useMenuWords()
  const { draft, take } = useMenu()
  const [counts, setCounts] = useState(NONE)
  const all = HELD.reduce((sum, held) => sum + counts[held], 0)
  const step = (held: Held, by: number) =>
    setCounts({ ...counts, [held]: Math.min(MOST_WELLS, Math.max(0, counts[held] + by)) })
  const put = () => {
    const wanted = HELD.flatMap((held) => Array.from({ length: counts[held] }, () => held))
    const ids: string[] = []
    let after = draft
    for (const held of wanted) {
      const id = newId(after, 'well', `${held} well`)
      ids.push(id)
      after = { ...after, rows: { ...after.rows, [`well:${id}`]: { held } } }
    }
    take(
      ...ids.map(
        (id, at) =>
          ({ do: 'put', entity: 'well', id, fields: { held: wanted[at] ?? 'hot' } }) as const,
      ),
    )
    onDone()
  }
  const title = isFirst ? words.line.firstWells : words.line.addWell
  return (
    <Panel
      className={styles.panel ?? ''}
      title={title}
      label={title}
      {...(isFirst ? {} : { back: words.screen.close, onBack: onDone })}
    >
      <Helped
        acts={
          <Button kind="main" lacks={all === 0 ? words.line.lacksWells : null} onClick={put}>
            {words.line.putWells(all)}
          </Button>
        }
      >
        <p>{words.line.firstWellsWhat}</p>
        <About of="held">
          <ul className={styles.counts}>
            {HELD.map((held) => (
              <li key={held}>
                <span>
                  <b>{words.line.held[held]}</b> {words.line.heldWhy[held]}
                </span>
                <button
                  type="button"
                  aria-label={words.line.fewerWells(held)}
                  disabled={counts[held] === 0}
                  onClick={() => step(held, -1)}
                >
                  −
                </button>
                <output aria-label={words.line.held[held]}>{counts[held]}</output>
                <button
                  type="button"
                  aria-label={words.line.moreWells(held)}
                  onClick={() => step(held, 1)}
                >
                  +
                </button>
              </li>
            ))}
          </ul>
        </About>
      </Helped>
    </Panel>
  )
}

import { BareLine } from '#components/pick-up/bare-line.tsx'
import { Called } from '#components/pick-up/called.tsx'
import { useMoved } from '#components/pick-up/moved.ts'
import { Path } from '#components/pick-up/path.tsx'
import styles from '#components/pick-up/pick-up.module.css'
import { useShape } from '#components/pick-up/shape.ts'
import { fitTickets, Shelf } from '#components/pick-up/shelf.tsx'
import { usePickUpWords } from '#components/pick-up/words.tsx'
import type { PickUpPicture } from '#lib/rooms/shelf/views/pick-up.ts'
import { standingIn } from '#lib/rooms/shelf/views/pick-up-places.ts'

/** One path from the queue over the line to the shelf; closed, the line stands alone. */
export function Board({ picture }: { readonly picture: PickUpPicture }) {
  const words = usePickUpWords()
  const board = useMoved()
  const [shelf, { aspect, height }] = useShape()
  const [path, shape] = useShape()
  const made = standingIn(picture, 'made')
  const fitted = fitTickets(made, aspect)
  if (!picture.open && picture.builds.length === 0)
    return (
      <div className={styles.closed}>
        <p>{words.closed}</p>
        <BareLine wells={picture.wells} />
      </div>
    )
  return (
    <div className={styles.board} ref={board}>
      <Called picture={picture} />
      <Path picture={picture} mostPx={fitted.size * height} box={path} shape={shape} />
      <Shelf made={made} fitted={fitted} box={shelf} />
    </div>
  )
}

import styles from '#components/counter/pan.module.css'
import { PanName } from '#components/counter/pan-name.tsx'
import { sayOnPan } from '#components/counter/say-on-pan.ts'
import frame from '#components/counter/step.module.css'
import { type CounterWords, useCounterWords } from '#components/counter/words.tsx'
import { useNarrow } from '#components/device/use-device.ts'
import { Line } from '#components/line/line.tsx'
import type { Offer } from '#lib/rooms/orders/facts/offer.ts'
import { type PanTold, panTold } from '#lib/rooms/orders/views/pan-told.ts'

/** The line while a guest is asked: what they keep from is marked on its pans, each with a word. */
export function LineTold({ offer }: { readonly offer: Offer }) {
  const words = useCounterWords()
  const narrow = useNarrow()
  return (
    <div className={frame.line}>
      <Line
        station={offer.state.station}
        label={words.over.line}
        wrap={narrow ? 'by-well' : 'never'}
        renderPan={(_, component) => {
          const told = panTold(offer, component.id)
          const word = sayTold(words, told)
          return (
            <div className={styles.pan} data-told={lookOf(told)}>
              <div className={styles.face}>
                <PanName component={component} />
                {word !== '' && <strong className={styles.word}>{word}</strong>}
              </div>
            </div>
          )
        }}
      />
    </div>
  )
}

const lookOf = (told: PanTold): string => {
  if (told.kind === 'need') return told.isApart ? 'apart' : 'no'
  return told.kind === 'none' && told.standing.kind === 'unchecked' ? 'no' : told.kind
}

const sayTold = (words: CounterWords, told: PanTold): string => {
  switch (told.kind) {
    case 'plain':
      return ''
    case 'backup':
      return words.over.backup
    case 'need': {
      const said = [...new Set(told.findings.map((one) => sayOnPan(words, one)))]
      // What is in it says more than what it touches.
      const inIt = said.filter((word) => word !== words.over.touches)
      const [first = '', ...others] = inIt.length > 0 ? inIt : said
      return words.over.andMore(first, others.length)
    }
    case 'none':
      switch (told.standing.kind) {
        case 'unchecked':
          return words.pan.unchecked
        case 'not-selling':
          return words.pan.notSelling
        case 'kept':
          return words.mark.saved
        case 'gone':
          return told.standing.notLoaded ? words.mark.notLoaded : words.pan.gone
      }
  }
}

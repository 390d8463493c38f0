import type { StationDocument } from '#lib/station/station-document.ts'

/** Hashes of the pictures that labels of a document name, each once, in its order. */
export const picturesNamed = ({ ingredients }: StationDocument): readonly string[] => [
  ...new Set(
    ingredients.flatMap((one) =>
      [one.photo, ...(one.products ?? []).map(({ photo }) => photo)].filter(
        (photo) => photo !== undefined,
      ),
    ),
  ),
]

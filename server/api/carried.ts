import { libraryFileSchema } from '../../core/library/library.ts'

/** What an opened plan brings along, in the body of a search. */
export const carriedSchema = libraryFileSchema
  .nullish()
  .meta({ description: 'Records that a plan brings along: the search also knows those of them that the library does not hold.' })

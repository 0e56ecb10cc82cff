/** The field at fault, as a path into the file ("batches[3].prep.skill"), and what is wrong with it. */
export type FileProblem = { readonly field: string; readonly message: string }

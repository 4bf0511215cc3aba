/** A pure step that is done once for each thing it is asked of, and remembered as long as that lives. */
export function once<Owner extends object, Made>(make: (owner: Owner) => Made): (owner: Owner) => Made {
  const made = new WeakMap<Owner, { readonly is: Made }>();
  return (owner) => {
    const known = made.get(owner) ?? { is: make(owner) };
    made.set(owner, known);
    return known.is;
  };
}

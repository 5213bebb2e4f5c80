/** Listens to what Node.js warns of, such as calls that will go away. A test ends by expecting that nothing was said. */
export function listenForWarnings(): { readonly said: readonly string[]; readonly stop: () => void } {
  const said: string[] = [];
  const listen = ({ name, message }: Error) => said.push(`${name}: ${message}`);
  process.on('warning', listen);
  return { said, stop: () => process.off('warning', listen) };
}

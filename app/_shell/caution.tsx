/** The usual caution, at the foot of every page. */
export function Caution() {
  return (
    <footer className="caution">
      <p className="src">
        Follow the tested recipe and its process for your elevation. Local codes and licensed practice come first
        <span className="caution-sale">: home-canned food is often not allowed to be sold or donated</span>.
      </p>
    </footer>
  )
}

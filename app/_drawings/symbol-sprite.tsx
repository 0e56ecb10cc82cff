/**
 * The drawings of the trade: line 3 on a grid of 48, square ends, in the colour of the words beside them.
 * Put once at the top of the document; `TradeSymbol` shows one of them.
 */
export function SymbolSprite() {
  return (
    <svg className="sprite" width="0" height="0" aria-hidden="true">
      <symbol id="sym-jar" viewBox="0 0 48 64">
        <path d="M14 4H34M12 9H36V16H12ZM15 16C15 21 9 21 9 28V55Q9 60 14 60H34Q39 60 39 55V28C39 21 33 21 33 16" />
      </symbol>
      <symbol id="sym-jar-full" viewBox="0 0 48 64">
        <path {...SOLID} d="M12.5 27H35.5V54Q35.5 56.5 33 56.5H15Q12.5 56.5 12.5 54Z" />
        <path d="M14 4H34M12 9H36V16H12ZM15 16C15 21 9 21 9 28V55Q9 60 14 60H34Q39 60 39 55V28C39 21 33 21 33 16" />
      </symbol>
      <symbol id="sym-jar-gap" viewBox="0 0 48 64">
        <path strokeDasharray="5 4" d="M14 4H34M12 9H36V16H12ZM15 16C15 21 9 21 9 28V55Q9 60 14 60H34Q39 60 39 55V28C39 21 33 21 33 16" />
      </symbol>
      <symbol id="sym-jar-place" viewBox="0 0 48 64">
        <path d="M11 58H37" />
      </symbol>
      <symbol id="sym-headspace" viewBox="0 0 58 64">
        <path {...SOLID} d="M12.5 33H35.5V54Q35.5 56.5 33 56.5H15Q12.5 56.5 12.5 54Z" />
        <path d="M14 4H34M12 9H36V16H12ZM15 16C15 21 9 21 9 28V55Q9 60 14 60H34Q39 60 39 55V28C39 21 33 21 33 16" />
        <path strokeWidth="2.5" d="M44 10H56M44 33H56M50 10V33" />
      </symbol>
      <symbol id="sym-lid-flat" viewBox="0 0 64 28">
        <path d="M4 10H60" />
        <path strokeWidth="2" d="M6 12V23H58V12" />
      </symbol>
      <symbol id="sym-lid-sunk" viewBox="0 0 64 28">
        <path d="M4 8H15C24 8 25 17 32 17S40 8 49 8H60" />
        <path strokeWidth="2" d="M6 10V22H58V10" />
      </symbol>
      <symbol id="sym-lid-domed" viewBox="0 0 64 28">
        <path d="M4 13H15C24 13 25 3 32 3S40 13 49 13H60" />
        <path strokeWidth="2" d="M6 15V25H58V15" />
      </symbol>
      <symbol id="sym-lid-unchecked" viewBox="0 0 64 28">
        <path strokeDasharray="7 5" d="M4 9H60" />
        <path strokeWidth="2" d="M6 12V23H58V12" />
      </symbol>
      <symbol id="sym-kettle" viewBox="0 0 48 48">
        <path d="M7 20H41V35Q41 42 34 42H14Q7 42 7 35ZM7 25H2M41 25H46M22 20 33 4" />
        <path strokeWidth="2.5" d="M13 13q2.5-3 0-6M20 13q2.5-3 0-6" />
      </symbol>
      <symbol id="sym-canner" viewBox="0 0 48 48">
        <path d="M6 9V44H42V9M2 9H6M42 9H46" />
        <path strokeWidth="2.5" d="M8 17q4-4 8 0t8 0t8 0t8 0" />
        <path
          {...SOLID}
          d="M11 26H18V39H11ZM20.5 26H27.5V39H20.5ZM30 26H37V39H30ZM12 22.5H17V24.5H12ZM21.5 22.5H26.5V24.5H21.5ZM31 22.5H36V24.5H31Z"
        />
      </symbol>
      <symbol id="sym-pressure" viewBox="0 0 48 48">
        <path d="M6 20V44H42V20M3 20H45M9 20Q9 14 16 14H32Q39 14 39 20M24 14V9" />
        <path d="M24 9L29 4" />
        <circle cx="24" cy="31" r="7" />
        <path strokeWidth="2.5" d="M24 31L28 27" />
      </symbol>
      <symbol id="sym-burner" viewBox="0 0 48 48">
        <path d="M5 42H43M10 42V37H38V42" />
        <path
          strokeWidth="2.5"
          d="M14 31C9 25 14 22 14 15C19 20 19 26 14 31ZM24 31C17 23 24 18 24 9C31 16 31 24 24 31ZM34 31C29 25 34 22 34 15C39 20 39 26 34 31Z"
        />
      </symbol>
      <symbol id="sym-rack" viewBox="0 0 48 48">
        <path d="M3 37H45M8 37V43M40 37V43" />
        <path {...SOLID} d="M8 19H16V34H8ZM20 19H28V34H20ZM32 19H40V34H32ZM9 14H15V16.5H9ZM21 14H27V16.5H21ZM33 14H39V16.5H33Z" />
      </symbol>
      <symbol id="sym-fill" viewBox="0 0 48 48">
        <path d="M10 4H38L28 18V27H20V18ZM24 30V35M12 35V44H36V35" />
      </symbol>
      <symbol id="sym-hold" viewBox="0 0 48 64">
        <path d="M14 4H34M12 9H36V16H12ZM15 16C15 21 9 21 9 28V33M39 33V28C39 21 33 21 33 16M9 44V55Q9 60 14 60H34Q39 60 39 55V44" />
        <path {...SOLID} d="M4 34H44V43H4Z" />
        <path d="M24 39L15 53M24 39L33 53" />
      </symbol>
      <symbol id="sym-recall" viewBox="0 0 48 64">
        <path d="M14 4H34M12 9H36V16H12ZM15 16C15 21 9 21 9 28V55Q9 60 14 60H34Q39 60 39 55V28C39 21 33 21 33 16" />
        <path strokeWidth="7" d="M3 26L45 55M45 26L3 55" />
      </symbol>
      <symbol id="sym-boil" viewBox="0 0 48 48">
        <path d="M4 22q5-7 10 0t10 0t10 0t10 0" />
        <circle cx="13" cy="35" r="4" />
        <circle cx="25" cy="31" r="3" />
        <circle cx="35" cy="38" r="5" />
        <path strokeWidth="2.5" d="M15 13q3-4 0-8M24 13q3-4 0-8M33 13q3-4 0-8" />
      </symbol>
      <symbol id="sym-again" viewBox="0 0 48 48">
        <path d="M4 28H44V42H4ZM14 28V42M24 28V42M34 28V42M40 24V9H9V16" />
        <path {...SOLID} d="M9 26L2 14H16Z" />
      </symbol>
      <symbol id="sym-refused" viewBox="0 0 48 48">
        <path d="M9 6H39V42H9Z" />
        <path strokeWidth="4" d="M16 24H32" />
      </symbol>
      <symbol id="sym-offline" viewBox="0 0 48 48">
        <path d="M4 24H17M31 24H44M17 17V31M31 17V31" />
      </symbol>
      <symbol id="sym-hands" viewBox="0 0 48 48">
        <path d="M14 44V30L6 22L10 17L17 22V10Q17 4 24 4H29Q36 4 36 11V44Z" />
        <path d="M14 37H36" />
      </symbol>
      <symbol id="sym-contains" viewBox="0 0 48 48">
        <path strokeWidth="4" d="M24 4L44 24L24 44L4 24Z" />
        <path strokeWidth="4" d="M24 14V27" />
        <circle {...SOLID} cx="24" cy="33" r="2.8" />
      </symbol>
      <symbol id="sym-jar-domed" viewBox="0 0 48 64">
        <path {...SOLID} d="M12.5 27H35.5V54Q35.5 56.5 33 56.5H15Q12.5 56.5 12.5 54Z" />
        <path d="M11 7C16 7 17 1.5 24 1.5S32 7 37 7M12 10H36V16H12ZM15 16C15 21 9 21 9 28V55Q9 60 14 60H34Q39 60 39 55V28C39 21 33 21 33 16" />
      </symbol>
    </svg>
  )
}

const SOLID = { fill: 'currentColor', stroke: 'none' }

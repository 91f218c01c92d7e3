r"""How makers say a thing, and how the language says it: patterns over a clause or a head.

What a pattern makes is only offered where it reads (mending.py), so a pattern may be generous.
"""

from __future__ import annotations

import re
from functools import cache

_FIGURES = r"(\d[\d/.½¼¾⅛⅜⅝⅞-]*(?: ?\d+/\d+| [½¼¾⅛⅜⅝⅞])?(?: ?(?:\"|'|(?:in|ft|mm|cm|m)\b))?)"
_AREA = r"((?:escape )?window|vent|panel)"
#: A number, or the name of a measure.
_N = rf"({_FIGURES[1:-1]}|[^\W\d][\w-]*)"
_SIDE = r"(left|right|front|back|bottom|top)"

#: A pattern, and what the language says for it.
Phrase = tuple[str, str]

_ONLY_WHEN = (
    (r"^unless (.+) over\b", r"only when \1 at most"),
    (r"^unless (.+) under\b", r"only when \1 at least"),
    (r"^(?:only )?(?:if|when|where)\b", "only when"),
    (r"^only (?!when\b)", "only when "),
    (r"\bis (?=over|under|more|less|at|greater|longer|shorter|smaller|above|below)", ""),
    (r"(?:>=|≥|(?:is )?(?:no|not) less than|(?:is )?from)", " at least "),
    (r"(?:<=|≤|(?:is )?(?:no|not) more than|(?:is )?up to)", " at most "),
    (r"(?:>|(?:more|greater|longer|wider|taller|larger|bigger) than|above)", " over "),
    (r"(?:<|(?:less|smaller|shorter|narrower) than|below)", " under "),
)
_NUMBERS = tuple(
    (rf"\b{word}\b", str(number))
    for number, word in enumerate(("one", "two", "three", "four", "five", "six"), 1)
)
_ROWS = (
    (rf"^(\d+) copies {_N} apart (across|deep|up)$", r"\1 copies every \2 \3"),
    (rf"^(\d+) copies every {_N} (apart )?(?:in a row )?(across|deep|up)$", r"\1 copies every \2 \4"),
    (r"\bcopies (?:evenly spread|evenly spaced|evenly|spread)\b", "copies spread evenly"),
    (r"\brow (?:centred )?(?:in|at|about)\b", "row centred on"),
)
_PLACES = (
    (rf"^{_FIGURES} above\b", r"bottom \1 above"),
    (rf"^{_FIGURES} below\b", r"top \1 below"),
    (rf"^{_FIGURES} behind\b", r"front \1 behind"),
    (r"^(?:on|on the) top of\b", "on"),
    (r"^(?:below|beneath|underneath)\b", "under"),
    (rf"^flush (?:to|at|on) {_SIDE}\b", r"flush with \1"),
    (rf"^flush {_SIDE}\b", r"flush with \1"),
    (r"^(tall|deep|wide|long) as\b", r"as \1 as"),
    (r"^as (?:high|height) as\b", "as tall as"),
    (r"^between (\S+) to (\S+)", r"between \1 and \2"),
    (rf"^from {_SIDE} to {_SIDE} of (\S+)$", r"from \1 of \3 to \2 of \3"),
    (rf"^{_SIDE} = {_N}$", r"\1 at \2"),
    (rf"^{_FIGURES} from {_SIDE} of (\S+)$", r"\2 \1 inside \2 of \3"),
    (rf"\b(past|housed|with|less) {_N} (?:at )?(?:both|each) ends?$", r"\1 \2 each end"),
    (rf"^(past|housed|with) {_N}$", r"\1 \2 each end"),
    (rf"^less {_N} each end$", r"with \1 each end"),
)
_MOVES = (
    (rf"^(?:hinged?|hinges|hung)(?: on| at| to| by)?(?: the)? {_SIDE}(?: side| edge)?$", r"hinged \1"),
    (rf"^opens? (?:to |by )?{_FIGURES}(?: ?°| deg(?:ree)?s?\.?)?$", r"opens \1 degrees"),
    (rf"^(?:slides?|pulls) (?:out )?(?:by |to )?{_FIGURES}$", r"slides out \1"),
    (r"^(?:lifts? (?:out|off|up)|lift-out|loose|removable)$", "lifts out"),
)
_SIZES_APART = (r"(?<=[\d\s\"'½¼¾⅛⅜⅝⅞]) ?x ?(?=[\d\w])", " by ")
_CUTS = (
    (rf"^(?:two|\d+) holes? {_FIGURES}", r"hole \1"),
    (rf"^(hole .+) at {_N} from\b", r"\1, \2 from"),
    (rf"^mitre (?:at )?(both ends|{_SIDE[1:-1]} end)$", r"mitre 45 at \1"),
    (rf"^{_FIGURES} holes?\b", r"hole \1"),
    (r"^holes\b", "hole"),
    (r"^(?:drill|bore)\b", "hole"),
    (rf"^hole {_FIGURES} {_FIGURES} deep\b", r"hole \1 by \2"),
    (rf"^hole {_FIGURES} deep {_FIGURES}", r"hole \1 by \2"),
    (rf"^(hole|dado|groove|rabbet) {_FIGURES} (?:wide )?(?:x|by) {_FIGURES}(?: deep)?\b", r"\1 \2 by \3"),
    (r"\b(?:in|on|to) (?=(?:left|right|front|back|bottom|top)\b)", "into "),
    (_SIZES_APART[0], _SIZES_APART[1]),
    (r"^(?:rebate)\b", "rabbet"),
    (r"^(?:housing|trench)\b", "dado"),
    (r"^(?:miter|mitred|mitered)\b", "mitre"),
    (r"(?<=\d) ?(?:°|deg(?:ree)?s?\b\.?)", ""),
    (rf"\bat {_SIDE}$", r"at \1 end"),
    (r"\bat (?:the )?(?:ends|both|both end|each end)$", "at both ends"),
    (rf"^bevel {_FIGURES} (?:at|on) {_SIDE}(?: edge)?$", r"bevel \1 along \2"),
    (rf"^taper(?:ed)? (?:from )?{_FIGURES} to {_FIGURES}", r"taper to \2"),
    (rf"\bat {_SIDE}(?= (?:over|on)\b)", r"at \1 end"),
    (rf"^notch {_N} for\b", "notch for"),
    (rf"^notch for (\S+) {_FIGURES} clear$", r"notch for \1 with \2 clear"),
    (r"^notch (?!for\b)([^\W\d]\S*)$", r"notch for \1"),
    (rf"^(?:rounded|radiused|round) (corners|edges) {_FIGURES}$", r"\1 rounded \2"),
    (rf"^(?:chamfered|bevelled|eased) (corners|edges) {_FIGURES}$", r"\1 chamfered \2"),
    (rf"^(?:chamfer|chamfered) {_FIGURES}$", r"edges chamfered \1"),
    (rf"^(?:roundover|round-over|radius) {_FIGURES}$", r"edges rounded \1"),
    (rf"^(corners|edges) (?:eased|radius|radiused|round) {_FIGURES}$", r"\1 rounded \2"),
    (rf"^(corners|edges) (?:chamfer|bevelled|cut) {_FIGURES}$", r"\1 chamfered \2"),
    (rf"^round {_FIGURES}(?: diameter| dia)?$", r"round \1"),
    (rf"^(?:plane|planed|planed to|plane to|thickness) {_FIGURES}$", r"plane \1"),
    (rf"^(?:ripped|rip)(?: to)? {_FIGURES}$", r"rip \1"),
    (rf"^cut (?:to |at )(?:length )?{_FIGURES}$", r"cut \1"),
    (rf"^{_FIGURES} (?:from )?(?:the )?{_SIDE}(?: edge| end| side)?$", r"\1 from \2"),
    (rf"^stopped {_FIGURES} (?:from|before|short of)(?: the)? {_SIDE}$", r"stopped \1 at \2"),
    (r"^(?:both ends|each end|end|ends) (?:cut )?(?=square|level|plumb|pointed)", "ends cut "),
    (r"^(?:bottom|lower) (?:end )?(?:cut )?(?=square|level|plumb|pointed)", "lower end cut "),
    (r"^(?:top|upper) (?:end )?(?:cut )?(?=square|level|plumb|pointed)", "upper end cut "),
    (r"\bcut (?:straight|flush|square on)$", "cut square"),
    (r"\bcut (?:flat|horizontal)$", "cut level"),
    (r"\bcut (?:vertical|upright)$", "cut plumb"),
)
_SLANTS = (
    (
        rf"^(?:tilted|tilt|leaning|leans) {_FIGURES}(?: degrees)? (?:to|towards?)?(?: the)? ?{_SIDE}$",
        r"tilted \1 degrees towards \2",
    ),
    (
        rf"^(?:splayed|splay) {_FIGURES}(?: degrees)? (?:to|towards?)?(?: the)? ?{_SIDE}$",
        r"splayed \1 degrees towards \2",
    ),
    (rf"^(tilted|splayed) (?:to|towards) {_SIDE} {_FIGURES}(?: degrees)?$", r"\1 \3 degrees towards \2"),
    (
        rf"^(tilted|splayed) {_FIGURES} degrees towards {_SIDE} and {_SIDE}$",
        r"\1 \2 degrees towards \3 and \2 degrees towards \4",
    ),
    (
        rf"^(?:rising|rises|rise|diagonal) (?:from \S+ )?(?:to|to the|towards|toward)? ?{_SIDE}$",
        r"rising towards \1",
    ),
)
_PART = (
    *_ONLY_WHEN,
    (r"^in (?:every|all|each of the|the)? ?corners?(?: of)? (\S+)$", r"in each corner of \1"),
    *_MOVES,
    *_SLANTS,
    *_PLACES,
    *_CUTS,
    *_ROWS,
)
_SCREWS = (
    (r"\bx\s*(?=\d)", "x "),
    (r"^(\d+) (screws|nails|dowels|bolts|biscuits|pocket screws|loose tenons) (#?\d.*)$", r"\2 \3"),
    (r"\bby\b", "x"),
    (r"\bno\.? ?(\d+)\b", r"#\1"),
    (rf"^(#\d+) ?x ?{_FIGURES} screws$", r"screws \1 x \2"),
    (r"\bin (?=stud|masonry|board)", "into "),
    (r"\bstuds\b", "stud"),
)
#: By the kind of statement.
_PHRASES: dict[str, tuple[Phrase, ...]] = {
    "part": _PART,
    "assembly": (*_ONLY_WHEN, *_MOVES, *_PLACES, *_ROWS),
    "outline": (*_ONLY_WHEN, *_PLACES, *_ROWS),
    "join": (
        *_ONLY_WHEN,
        *_SCREWS,
        (r"^stainless steel$", "stainless"),
        (r"^lap(?: joint)?$", "half lap"),
        (r"^splined$", "splined mitre"),
        (r"^(.+) (stainless|galvanised|galvanized|brass)(?: steel)?$", r"\1, \2"),
        (r"^half-lap(?: joint)?s?$", "half lap"),
        (r"^(half lap|bridle|mitre|butt|dado|rabbet|groove|splined mitre) joints?$", r"\1"),
        (r"^(?:box|finger) joints?$", "box joint"),
        (r"^(?:mortice|mortise)(?: (?:and|&) tenon)?s?(?: joint)?s?$", "mortise and tenon"),
        (r"^(?:mortise and )?tenons?$", "mortise and tenon"),
        (rf"^mortise and tenon {_FIGURES} deep", r"mortise and tenon \1 long"),
        (rf"^mortise and tenon {_FIGURES}$", r"mortise and tenon \1 long"),
        (
            rf"^mortise and tenon {_FIGURES} long(?: by| x) {_FIGURES}(?: thick)?$",
            r"mortise and tenon \1 long \2 thick",
        ),
        (r"^tongue(?: (?:and|&) groove)?s?$", "tongue and groove"),
        (r"^loose tenons?\b", "loose tenons"),
        (r"^wedged$", "wedges"),
        (r"^shelf pin$", "shelf pins"),
        (r"^glued(?: with)?\b", "glue"),
        (r"^wood glue$", "glue pva"),
        (rf"^{_FIGURES} (?:degrees|°)$", r"at \1 degrees"),
        (rf"^at {_FIGURES}(?: ?°)?$", r"at \1 degrees"),
        (rf"^from (?:the )?(end|edge) {_FIGURES}$", r"\2 from \1"),
        (rf"^{_FIGURES} from (?:the|each) (end|edge)s?$", r"\1 from \2"),
        (r"^from (?:the )", "from "),
        (rf"^pilot {_FIGURES}$", r"pilot holes \1"),
        (rf"^(?:counterbore|counter bored|counter-bored) {_FIGURES}$", r"counterbored \1"),
        (r"^(?:countersink|counter sunk|counter-sunk|countersinked)$", "countersunk"),
        (r"^threads? (coarse|fine)$", r"\1 thread"),
        (r"^(coarse|fine)$", r"\1 thread"),
        (r"^(\d+) per (?:side|corner)$", r"\1 per end"),
        (rf"^every {_FIGURES} (?:apart)$", r"every \1"),
        (rf"^{_FIGURES} apart$", r"every \1"),
    ),
    "fit": (
        *_ONLY_WHEN,
        *_SCREWS,
        *_NUMBERS,
        (r"\b(?:butt|brass|steel|drawer|door|concealed|piano|cabinet) (?=hinge|slide|pull|knob|catch)", ""),
        (rf"^(.*castors?|.*casters?|.*wheels?) {_FIGURES} (?:tall|high)$", r"\1, \2 tall"),
        (r"\b(?:wheels?)\b", "castors"),
        (r"\b(?:handles?)\b", "pulls"),
        (
            r"^(?:with )?(?:an? |the )?(?:drawer )?(?:interlock(?:s|ed|ing)?|anti-tip|anti-tilt)"
            r"(?: slides?| lock| device)?$",
            "one at a time",
        ),
        (
            r"^(?:only |just )?(?:1|one)(?: drawer| door)?(?: opens?| slides(?: out)?)? "
            r"(?:at a|at one|a) time(?: only)?$",
            "one at a time",
        ),
        (r"\b(?:runners?)\b", "slides"),
        (r"\bfeet\b", "glides"),
        (r"\bmagnets?\b|\blatch(?:es)?\b", "catches"),
        (r"\b(hinges|slides|castors|glides|levellers|knobs|pulls|catches|stays): ?(\d+)$", r"\2 \1"),
    ),
    "finish": (
        *_ONLY_WHEN,
        *_NUMBERS,
        (r"^coats? of\b", "1 coat of"),
        (r"^sand (?:to|with|at)\b", "sand"),
        (r" ?\bgrit\b", ""),
        (r"^(?:scuff|rub down|de-nib|denib)(?: sand)?(?: with| to| at)? (\d+)", r"sand \1"),
        (r"\b(?:the|its) (?=\w)", ""),
        (r"^(on )?(?:underside|bottoms) of\b", r"\1bottom of"),
        (r"^(on )?everything but\b|^(on )?all except\b", r"\1all but"),
        (r"^(?:brushed|brush)(?: on)?$", "by brush"),
        (r"^(?:sprayed|spray)(?: on)?$", "by spray"),
        (r"^(?:rolled|roller)(?: on)?$", "by roller"),
        (r"^(?:wiped|wipe)(?: on)?$", "by rag"),
        (r"^(?:thin|thinned)(?: by)? (\d+)(?: ?%| percent)?$", r"thinned \1 %"),
        (r"^distress(?:ed)?$", "distress edges"),
        (r"^(?:aged|age)$", "age with vinegar and iron"),
        (r"^wood filler$|^(?:putty|fill)(?: holes)?$", "fill holes with wood filler"),
        (r"^(?:plugs|plug holes)$", "plug pockets"),
        (r"^mask(?:ed)?(?: joints| joint)?$", "mask glue lines"),
        (r"^pre-?finish(?:ed)?$", "before assembly"),
        (r"^(\d+ (?:qt|quart|quarts|gal|gallon|gallons|pint|pints|oz|l|litre|litres) of .+)$", r"buy \1"),
        (r"^(have|buy) (\d+) (?:fl\.? ?oz|fluid ounces)\b", r"\1 \2 oz"),
        (r"^(?:maintain|re-?oil|oil again|recoat)(?: it)? every\b", "renew every"),
        (r"^renew yearly$|^renew once a year$", "renew every year"),
        (r"^(?:drying|dries|let dry|dry for) (\d\S*)", r"dry \1"),
    ),
    "shop": (
        (r"^(\d+) percent\b", r"\1 %"),
        (r"^(\d+) ?%$", r"\1 % humidity"),
        (r"^humidity (\d+) ?%?$", r"\1 % humidity"),
        (r"^(?:starts|begin|from) (\d{4}-\d\d-\d\d)$", r"start \1"),
        (r"^(\d+) (?:h|hours) a day$", r"\1 h per day"),
    ),
    "load": (
        *_ONLY_WHEN,
        (
            r"\b(lb|lbs|kg)(?: ?/ ?| a | each | per )(?:sq\.? ?|square )(?:ft|foot|feet)\b\.?",
            r"\1 per square foot",
        ),
        (
            r"\b(lb|lbs|kg)(?: ?/ ?| a | each | per )(?:sq\.? ?|square )(?:m|metre|meter)\b",
            r"\1 per square metre",
        ),
        (rf"^{_FIGURES} kg(?: ?/ ?| per )m[2²]$", r"\1 kg per square metre"),
        (r"\b(lb|lbs|kg)(?: ?/ ?| a | each | per )(?:ft|foot)\b\.?", r"\1 per foot"),
        (r"\b(lb|lbs|kg)(?: ?/ ?| a | each )(?:m|metre|meter)\b", r"\1 per metre"),
        (rf"^per foot {_FIGURES} (lb|kg)$", r"\1 \2 per foot"),
        (rf"\b(lb|kg) {_FIGURES} from\b", r"\1 at \2 from"),
    ),
    "room": (
        (r"^(?:skirting-board|skirting board|baseboard)\b", "skirting"),
        (r"^(?:socket|plug|power)\b", "outlet"),
        (r"^(?:lamp |power |extension )?(?:cord|cable|lead|flex|wire|wiring)\b", "cord"),
        (
            r"^cord (?:runs? |goes |hidden |is )?(?:in|inside|into|within|behind)(?: the)? walls?$",
            "cord inside wall",
        ),
        (
            r"^cord (?:runs? |goes )?(?:under|beneath|below)(?: the| a)? (?:carpet|rug|mat)s?$",
            "cord under carpet",
        ),
        (r"^cord (?:runs? |goes )?through(?: the| a)? (wall|floor|ceiling|doorway)s?$", r"cord through \1"),
        (r"^cord (?:runs? |goes )?through(?: the| a)? door$", "cord through doorway"),
        (r"^cord (?:runs? |goes )?(?:along|on|down)(?: the)? wall$", "cord along wall"),
        (r"^radiator\b", "heater"),
        (r"^(?:egress|emergency|fire escape|rescue) window\b", "escape window"),
        (r"^(?:grille|grill|register|air vent|return|duct|air brick)\b", "vent"),
        (r"^(?:(?:electrical|electric|breaker) panel|breaker box|fuse box|breakers|panelboard)\b", "panel"),
        (r"^(?:smoke (?:alarm|detector)|detector)\b", "alarm"),
        (
            rf"^{_AREA} {_FIGURES} (?:x|by) {_FIGURES},? (?:at )?{_FIGURES} across {_FIGURES} up",
            r"\1 \2 wide \3 tall \4 across \5 up",
        ),
        (
            rf"^{_AREA} (?:at )?{_FIGURES} across {_FIGURES} up,? {_FIGURES} wide {_FIGURES} tall",
            r"\1 \4 wide \5 tall \2 across \3 up",
        ),
        (r"\bat (?:the )?ground(?: level| floor)?$", "at grade"),
        (rf"^{_AREA} {_FIGURES} tall {_FIGURES} wide\b", r"\1 \3 wide \2 tall"),
        (r"^(?:fireplace|fire|space heater)\b", "stove"),
        (r"^(?:chimney|stovepipe|stove pipe)\b", "flue"),
        (r"^(?:corridor|hallway|passage)\b", "hall"),
        (rf"^wall (?:in front|opposite) {_FIGURES}(?: away)?$", r"wall front \1 away"),
        (r"^(?:kids|child)\b", "children"),
        (r"^no (?:kids|child)$", "no children"),
        (rf"^skirting {_FIGURES}(?: high)?$", r"skirting \1 tall"),
        (
            rf"^(outlet|switch|alarm) {_FIGURES} (?:up|tall|high) (?:by )?{_FIGURES} across$",
            r"\1 \3 across \2 up",
        ),
        (rf"^(outlet|switch|alarm) at {_FIGURES} across {_FIGURES} up$", r"\1 \2 across \3 up"),
        (
            rf"^(outlet|switch|alarm) {_FIGURES} across (?:by )?{_FIGURES} (?:tall|high)$",
            r"\1 \2 across \3 up",
        ),
        (rf"^stairs wide {_FIGURES}$", r"stairs \1 wide"),
        (rf"^studs {_FIGURES} across$", r"studs at \1"),
        (r"^(studs at .+|studs every .+ from .+) (?:across|up|from left)$", r"\1"),
        (r"^(studs every .+ from) (?:the )?(?:left|corner)", r"\1"),
        (r" & ", " and "),
        (r"^studs? (?:found |lie |are )?at\b", "studs at"),
        (
            rf"^studs? (?:starting|start|starts|beginning|first|from)(?: at| from)? {_FIGURES}$",
            r"studs at \1",
        ),
        (rf"^(?:first )?studs? (?:from |at ){_FIGURES},? every {_FIGURES}$", r"studs every \2 from \1"),
        (
            rf"^studs (?:every )?{_FIGURES}(?: apart)?,? (?:starting|start|starts|beginning|first|from)"
            rf"(?: at| from)? {_FIGURES}$",
            r"studs every \1 from \2",
        ),
        (rf"^studs {_FIGURES}(?: apart| o\.?c\.?| on centres?| on centers?)?$", r"studs every \1"),
        (rf"^studs every {_FIGURES} and {_FIGURES}$", r"studs at \1 and \2"),
        (rf"^ceiling {_FIGURES} (?:tall|high|up)$", r"ceiling \1"),
        (r"\bby\b", "x"),
        (r"^wall (?:at )?(?:the )?back$|^wall$", "wall behind"),
        (rf"^heater (?:at |on )?(?:the )?back {_FIGURES}", r"heater behind \1"),
        (rf"^heater {_FIGURES} away (left|right|front|behind)$", r"heater \2 \1 away"),
    ),
    "restrain": (
        *_ONLY_WHEN,
        *_SCREWS,
        (rf"^(?:at )?{_FIGURES} (?:tall|high|above floor|from floor)$", r"\1 up"),
        (rf"^(?:at )?{_FIGURES}(?: up| high)? (?:on|at)(?: the)? wall$", r"\1 up on wall"),
        (rf"^on(?: the)? wall(?: at)? {_FIGURES}(?: up| high)?$", r"\1 up on wall"),
        (
            r"\b(?:in|into|to)(?: the)? (?:piece|furniture|case|cabinet|bookcase|back|side|rail|top)$",
            "into piece",
        ),
        (
            rf"^(?:on|to|at) (?:the )?top,? {_FIGURES} (?:from|off)(?: the)? back(?: edge)?$",
            r"on top \1 from back",
        ),
        (r"^(?:on|to|at) (?:the )?top(?: of \S+)?$", "on top"),
        (r"^(\d+) (?:straps|brackets|cleats|of)$", r"\1 of them"),
        (r"^straps$", "strap"),
        (r"^brackets$", "bracket"),
    ),
    "step": (
        *_NUMBERS,
        (r"^(?:glue(?: up)?|assemble|screw)(?= )", "join"),
        (r"^wait (?:for )?(?:an|a) hour$", "wait 1 h"),
        (r"^wait for\b", "wait"),
        (r"^(?:paint|varnish|oil)(?= )", "finish"),
        (r"^(?:saw|rip|crosscut)(?= )", "cut"),
        (r"^(join|cut|shape|drill|sand|fit|finish) (\S+) (?:to|and|with) (\S+)$", r"\1 \2, \3"),
    ),
    "stock": (
        (r"^quarter-?sawn$", "quarter sawn"),
        (r"^flat-?sawn$", "flat sawn"),
        (r"^(?:pressure treated|pressure-treated|treatment)$", "treated"),
        (rf"^moisture {_FIGURES}$", r"moisture \1 %"),
        (rf"^{_FIGURES} ?% (?:moisture|mc)$", r"moisture \1 %"),
        (r"(?<=\S) ?[$£€] ?(?=\d)", " at "),
        (r"\bfor (?=\d)", "at "),
        (r"\bby\b", "x"),
        (rf"^{_FIGURES} x {_FIGURES}( at \S+)$", r"sheet \1 x \2\3"),
        (rf"^(\S+(?: \S+)*) round {_FIGURES}$", r"round \2 \1"),
        (rf"^{_FIGURES} (?:dowel|round) (.+)$", r"round \1 \2"),
    ),
    "measure": (
        (r" x ", " * "),
        (rf"{_FIGURES} ?%", r"\1 / 100"),
    ),
    "try": (
        (rf"^try (\S+): {_FIGURES} to\b", r"try \1: from \2 to"),
        (r" (?:step|steps|every|in steps of)(?: of)? ", " by "),
        (r" and ", ", "),
        (r" ?= ?", ": "),
    ),
    "purchase": (
        *_NUMBERS,
        (r"^([^\W\d]\S*) (\d+)$", r"\2 \1"),
        (r"^(\d+) x (.+)$", r"\1 \2"),
        (r" (?:at|of) (?=\d)", " "),
        (r"^(\d+) (\d+ (?:ft|in|mm|m)) ([^\W\d]\S*)$", r"\1 \3 \2"),
    ),
}


@cache
def rephrased(about: str) -> tuple[tuple[re.Pattern[str], str], ...]:
    """The phrases of one kind of statement. Compiled when a statement of that kind first fails to read."""
    return tuple((re.compile(pattern), said) for pattern, said in _PHRASES.get(about, ()))

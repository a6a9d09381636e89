// Written by `make generate` from the Go types of wasm/wire. Do not edit.

/** The version of the project value. */
export const FORMAT = 2;

/** HelloAsk asks for everything that never changes. */
export type HelloAsk = Record<string, never>;

/** PlatingID names a plating tone. */
export type PlatingID = string;

/** RGB8 is an sRGB colour (IEC 61966-2-1), 8 bits a channel, encoded. */
export interface RGB8 {
  r: number;
  g: number;
  b: number;
}

/** Plating is one tone of the finished metal. Dark, Mid and Bright are sRGB colours of its dark reflection, its face and its highlight; they are a guide for the screen, chosen by eye, with no published source. */
export interface Plating {
  id: PlatingID;
  name: string;
  dark: RGB8;
  mid: RGB8;
  bright: RGB8;
  /** Antique platings keep dark in the recesses of bare metal. */
  antique: boolean;
  /** SoftOnly platings are applied with soft fill only, as a rule (common practice, no published source). */
  softOnly: boolean;
  /** Nickel says that the tone usually bears nickel, which can cause skin reactions. */
  nickel: boolean;
}

/** NamedColour is a colour and its plain name. */
export interface NamedColour {
  name: string;
  rgb: RGB8;
}

/** GroundChoice is how the background is to be found. */
export type GroundChoice = "auto" | "clear" | "paper" | "none";

/** Op is the kind of a change made by hand to the flat drawing. */
export type Op = "role" | "lock" | "recolour" | "name" | "join" | "apart" | "fill" | "split";

/** FlatID names a flat across counts and edits. A flat is a set of leaves (the finest colours that were found); its ID is that of its leading leaf. Leaves are numbered from 0 by falling area; a flat split off by touch takes the next free number, in the order of the edits. */
export type FlatID = number;

/** Role is what becomes of a flat when the pin is made. */
export type Role = "enamel" | "metal" | "cutout" | "printed";

/** HandLine is a line drawn or erased by hand as a fill meets it. Points are in shares of the drawing's width and height, Width in shares of its width. */
export interface HandLine {
  points: [number, number][];
  width: number;
  erased?: boolean;
}

/** Edit is one change made by hand. X and Y are shares (0..1) of the drawing's width and height, so that they outlive a change of raster. */
export interface Edit {
  op: Op;
  flat: FlatID;
  with?: FlatID;
  role?: Role;
  locked?: boolean;
  rgb?: RGB8;
  name?: string;
  x?: number;
  y?: number;
  /** Count is the number of enamels shown when the edit was made: a split takes the area seen at that count; a role or a join goes to all that the flat held at that count. 0 means the finest flats. */
  count?: number;
  /** Gap closes an area that is open, for a fill: the two ends of a straight cut, x0 y0 x1 y1, in shares of width and height. */
  gap?: [number, number, number, number];
  /** Lines are those drawn or erased by hand before a fill, in order: it does not cross what is drawn, and does cross what is erased. */
  lines?: HandLine[];
}

/** RecipeKind names a built or mended detail with a width. */
export type RecipeKind = "outer-edge" | "build-lines" | "draw-line" | "erase-line" | "build-bridge" | "add-eye" | "round-tip" | "close-gap" | "build-border" | "thicken-line" | "widen-area" | "drop-thin" | "grow-area" | "drop-area" | "merge-area" | "open-up";

/** MM is a length in millimetres. */
export type MM = number;

/** Recipe is a change with a width in mm, applied by wall at a size. Width 0 means: as thin as the limits allow. */
export interface Recipe {
  kind: RecipeKind;
  width: MM;
  /** Points of a line drawn or erased by hand, in shares (0..1) of the drawing's width and height, so that they outlive a change of raster. */
  points?: [number, number][];
  /** Proposed is true while the tool proposes it and the person has not said yes. */
  proposed?: boolean;
}

/** LetterMark is a capital that the person marked along its stem: its foot and its head, in shares (0..1) of the drawing's width and height. */
export interface LetterMark {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

/** PartsChoice is what the person says of a pin that is in more than one part. */
export type PartsChoice = "" | "dangle" | "one";

/** Eye is a hole that a ring goes through. */
export interface Eye {
  /** At is its middle, in shares (0..1) of the drawing's width and height. */
  at: [number, number];
  /** Drawn is true of a hole that the drawing has; others are added, with metal round them. */
  drawn?: boolean;
}

/** Join is one place at which a part hangs from another. */
export interface Join {
  upper: Eye;
  lower: Eye;
  /** Ring is the outer diameter of the jump ring at either end; 0 for the usual. */
  ring?: MM;
  /** Links of chain between the rings; 0 when one ring alone joins the two. */
  links: number;
}

/** Parts says how the parts of a pin hang together. */
export interface Parts {
  choice: PartsChoice;
  joins?: Join[];
}

/** Finish is what sets a fill or a metal face apart from the plain one. */
export type Finish = "" | "glitter" | "pearl" | "translucent" | "glow" | "sandblasted" | "textured";

/** VersionColour is what one flat is ordered as in one version. */
export interface VersionColour {
  flat: FlatID;
  /** RGB takes the place of the drawing's colour; without it that stays. */
  rgb?: RGB8;
  /** Code is what a maker's colour list calls it, and Named the name beside the code. */
  code?: string;
  named?: string;
  /** Finish sets the fill, or the metal, apart from the plain one. */
  finish?: Finish;
}

/** VersionSet is the colours of one version. */
export interface VersionSet {
  id: string;
  colours: VersionColour[];
}

/** SetOn is everything of a design that speaks of places and flats of one drawing. */
export interface SetOn {
  colours: number;
  edits: Edit[];
  recipes: Recipe[];
  lettering?: LetterMark[];
  parts?: Parts;
  versions: VersionSet[];
}

/** DrawingRef points at one revision of a design's drawing. */
export interface DrawingRef {
  /** of the drawing opened in the session */
  id: string;
  fileName: string;
  /** Ground is how the background was found: see reduce.Ground. */
  ground: GroundChoice;
  /** Revision counts the drawings of a design as they came, from 1. */
  revision: number;
  /** Differs says what differs from the drawing that was on the sheet before it; empty for the first. */
  differs?: string;
  /** Places is how many places differ. */
  places?: number;
  /** Lost is what was set on the drawing before and does not fit this one, with its reason, a sentence each. */
  lost?: string[];
  /** Set is what was set on it when another took its place on the sheet. */
  set?: SetOn;
}

/** SizeBy says which measure of the outline a size is. */
export type SizeBy = "width" | "height" | "longest" | "mean";

/** Size is the size asked for, of the silhouette without its background. */
export interface Size {
  mm: MM;
  by: SizeBy;
}

/** Making is how the metal is made. */
export type Making = "struck" | "cast";

/** Fill is what the recesses take. */
export type Fill = "soft" | "hard" | "none";

/** Limits is what the maker can hold: data the person can change, in mm unless said otherwise. The defaults are common practice, with no published source. */
export interface Limits {
  /** thinnest metal line */
  line: MM;
  /** narrowest colour area that still takes a fill */
  area: MM;
  /** outer edge */
  edge: MM;
  /** smallest colour area, mm2 */
  areaSize: number;
  /** smallest through cut-out */
  cutOut: MM;
  /** narrowest bridge of metal that will not bend */
  bridge: MM;
  /** Least height of capitals, raised (metal in enamel) and sunk (enamel in metal); 0 when lettering is not to be looked for. */
  lettering: MM;
  letteringSunk: MM;
  /** Solid is how wide bare metal may be, each way, before it is noted that it may want texture or a fill; 0 for never. */
  solid: MM;
  /** The hole that a jump ring goes through, and the metal round it. */
  eye?: MM;
  eyeRim?: MM;
  /** Tip is the least radius of an outward tip; one that encloses fewer degrees than TipAngle is noted. 0 for no look at them. */
  tip?: MM;
  tipAngle?: number;
  /** Push is the force in newtons of a finger at the end of an arm, which the arm must stand without staying bent; 0 for no look at arms. */
  push?: number;
}

/** BaseMetal is the metal under the plating. */
export type BaseMetal = "iron" | "brass" | "copper" | "zinc";

/** PostCount is the person's choice of posts: 0 leaves it to the tool. */
export type PostCount = number;

/** Fastening is what holds a pin to cloth. */
export type Fastening = "" | "magnet" | "bar" | "screw";

/** Buyers is the youngest that a pin is meant for, as the maker of it says. */
export type Buyers = "" | "teens" | "eight" | "three" | "toddlers";

/** Range is what a figure may be, least and most: the two differ where something it hangs on is not known better. */
export interface Range {
  low: number;
  high: number;
}

/** Hold is what is not known of cloth and clutch. Nothing is published on them: the usual values are common practice, tried by hand, and can be changed. */
export interface Hold {
  /** Press is the force with which a clutch presses itself and the back of the pin on the cloth between them, N. */
  press: Range;
  /** Friction is the coefficient of friction of clutch and back on cloth. */
  friction: Range;
  /** Stiffness is the torque with which cloth resists the tilt of one clutch, N mm for each radian. */
  stiffness: Range;
  /** Cloth is the thickness of the cloth, mm. */
  cloth: Range;
}

/** Depths is how deep a pin is cut and how far it is filled. */
export interface Depths {
  /** depth of a colour area below the metal's top, mm */
  recess: Range;
  /** how far soft fill stays below the metal's top, mm */
  sunk: Range;
  /** density of the fill, g/cm3 */
  resin: Range;
}

/** Packing is what a pin is posted with. */
export interface Packing {
  cardW: MM;
  cardH: MM;
  /** of the card's board, g/m2; 0 for no card */
  cardGSM: number;
  /** of the board */
  cardThick: MM;
  /** mass of a clear sleeve, g; 0 for none */
  sleeve: Range;
}

/** Mark is the artist's own mark as it is struck on the back, one bit a cell. */
export interface Mark {
  /** cells, 1 to 128 */
  w: number;
  h: number;
  /** Rows is its cells from the top left as read from behind, a set bit where there is a stroke: highest bit first, each row begun on a byte, in base64 (RFC 4648, section 4). */
  rows: string;
  /** 0 for as high as there is room, up to a usual height */
  height?: MM;
  /** Least is the narrowest stroke or gap that the maker holds in it, mm; 0 for the usual. */
  least?: MM;
}

/** Stamp is what stands on the back: the artist's own mark, lettering below it, its lines from the top, or one of the two. */
export interface Stamp {
  lines: string[];
  /** of capitals; 0 for as large as there is room, up to a usual height */
  height: MM;
  /** raised metal, else cut in */
  raised: boolean;
  /** Least is the lowest capitals that the maker holds on a back; 0 for the usual. */
  least?: MM;
  mark?: Mark;
}

/** Back is what the person wishes of the back; its zero value leaves all of it to the tool. */
export interface Back {
  fastening?: Fastening;
  /** Hand is the places of posts set by hand, in shares (0..1) of the silhouette's width and height as seen from the FRONT, so that they outlive another size. */
  hand?: [number, number][];
  buyers?: Buyers;
  /** These are nil for the usual values. */
  hold?: Hold;
  depths?: Depths;
  packing?: Packing;
  stamp?: Stamp;
}

/** Extras is what a design is ordered with beside its metal and fill; its zero value is a first order with none of it. */
export interface Extras {
  /** Reorder says that the die was cut before, DieAge months ago. */
  reorder?: boolean;
  dieAge?: number;
  /** FurtherDies is how many parts are struck from dies of their own. */
  furtherDies?: number;
  /** a clear drop over soft enamel */
  dome?: boolean;
  /** a kind of the price list; empty for none */
  packaging?: string;
  /** a backing card printed by the maker */
  card?: boolean;
}

/** Version is one way to colour and plate a design. */
export interface Version {
  id: string;
  name: string;
  plating: PlatingID;
  /** Colours replaces the colours of flats in this version only, and holds their maker's codes. */
  colours: VersionColour[];
  /** pieces */
  quantity: number;
}

/** Design is one die: a drawing with its revisions, the flat drawing made of it, and everything that is the same for all its versions. */
export interface Design {
  id: string;
  name: string;
  /** the one on the sheet last */
  drawings: DrawingRef[];
  /** enamels asked for, 1..12 */
  colours: number;
  edits: Edit[];
  recipes: Recipe[];
  /** Lettering is the capitals that the person marked, to be told how they hold. */
  lettering?: LetterMark[];
  parts?: Parts;
  size: Size;
  making: Making;
  fill: Fill;
  limits: Limits;
  base: BaseMetal;
  thickness: MM;
  posts: PostCount;
  back?: Back;
  extras?: Extras;
  versions: Version[];
}

/** Break is one row of unit prices: it holds from a number of pieces up to the next row. */
export interface Break {
  /** pieces, 1 or more */
  from: number;
  /** Unit holds one price a piece for each size class. */
  unit: string[];
}

/** Together is whose pieces add up. */
export type Together = "version" | "design" | "order";

/** PiecePrices is the unit prices, for struck soft enamel with the colours and the post that are in the price. */
export interface PiecePrices {
  /** Sizes holds the greatest size, in mm, of each size class, rising; SizeBy says which measure counts (longest or mean). */
  sizes: MM[];
  sizeBy: SizeBy;
  breaks: Break[];
  /** Together says which pieces are counted together to reach a break. */
  together: Together;
}

/** Least is the fewest pieces that are made; 0 for any number. */
export interface Least {
  design: number;
  version: number;
}

/** DiePrices is what cutting dies costs. It is not discounted with the pieces (common practice, no published source). */
export interface DiePrices {
  /** Flat is paid for a die of any size, unless BySize holds a charge for each size class. */
  flat: string;
  bySize: string[];
  /** EachVersion is true of a maker who cuts a die for every version; as a rule the versions of a design share one. */
  eachVersion: boolean;
  /** Further is each die beside the first that one design needs. */
  further: string;
  /** KeptMonths is how long a die is kept for reorders; 0 for always, or when the maker does not say. */
  keptMonths: number;
}

/** ChargeBy says what a charge is counted by. */
export type ChargeBy = "piece" | "percent" | "set-up";

/** Charge is a rate and what it is counted by. */
export interface Charge {
  rate: string;
  by: ChargeBy;
}

/** KindCharge is one kind of a thing and what it costs on top. */
export interface KindCharge {
  id: string;
  charge: Charge;
}

/** Kinds is what the kinds of one thing cost on top of the unit price: those listed, and every other one. */
export interface Kinds {
  listed: KindCharge[];
  others: Charge;
}

/** Thick is what metal of a thickness or more costs on top. */
export interface Thick {
  from: MM;
  charge: Charge;
}

/** MetalPrices is what the metal costs on top: how it is made, its plating, its thickness. Struck is in the unit price unless it is listed. */
export interface MetalPrices {
  making: Kinds;
  plating: Kinds;
  /** Thick holds what thicker metal costs, from a thickness on, rising; below the first it is in the price. */
  thick: Thick[];
}

/** ColourPrices is what colour costs. */
export interface ColourPrices {
  /** enamels in the unit price */
  included: number;
  /** each further enamel */
  further: Charge;
  /** hard, none; soft is in the unit price unless it is listed */
  fill: Kinds;
  /** each enamel with a fill set apart: glitter, pearl and the like */
  fancy: Kinds;
  /** each colour printed on top */
  printed: Charge;
  /** PrintSetUp is paid once a version on a new die, for each colour printed. */
  printSetUp: string;
}

/** ShapePrices is what holes and loose parts cost. */
export interface ShapePrices {
  /** CutOutsFree is how many holes through the metal are in the price; CutOut is each further one. */
  cutOutsFree: number;
  cutOut: Charge;
  /** each part beside the first */
  part: Charge;
  /** each jump ring */
  ring: Charge;
  /** Chain is each chain between two parts, whatever its links. */
  chain: Charge;
}

/** BackPrices is what the back costs. A post and its clutch are in the unit price. */
export interface BackPrices {
  /** each post beside the first */
  post: Charge;
  /** Kinds is what another fastening, or another clutch, costs. */
  kinds: Kinds;
  /** Stamp is lettering or a mark on the back. It is cut with the die, so a set-up for it is paid once a design. */
  stamp: Charge;
}

/** PackPrices is what a pin is finished and packed with. */
export interface PackPrices {
  /** a clear drop over soft enamel */
  dome: Charge;
  /** bag, box and the like; none is in the price */
  packaging: Kinds;
  /** CardSetUp is paid once a version on a new die; Card is each backing card. */
  cardSetUp: string;
  card: Charge;
}

/** ProofPrices is what the maker's drawing costs, design by design. */
export interface ProofPrices {
  /** rounds in the price; 0 when the maker does not say */
  included: number;
  /** each further round */
  further: string;
}

/** DeliveryOn says what a share for delivery falls on. */
export type DeliveryOn = "pieces" | "all";

/** DeliveryChoice is one way: patient orders are cheaper, a rush is dearer. Where one of Off, More and Fee is known the others are nothing. */
export interface DeliveryChoice {
  name: string;
  /** working days of making; 0 when not said */
  days: number;
  /** percent taken off */
  off: string;
  /** percent put on */
  more: string;
  /** what the percents are of */
  on: DeliveryOn;
  /** once an order */
  fee: string;
}

/** Delivery is the ways in which a maker delivers, the usual one first. Without any there is nothing to choose. */
export interface Delivery {
  choices: DeliveryChoice[];
}

/** ShippingBy is what carriage goes by. */
export type ShippingBy = "flat" | "weight" | "class";

/** Grams is a mass. */
export type Grams = number;

/** ByWeight is the charge of a parcel up to a weight. */
export interface ByWeight {
  upTo: Grams;
  rate: string;
}

/** ShippingClass is one carrier or service. */
export interface ShippingClass {
  name: string;
  /** working days; 0 when not said */
  days: number;
  rate: string;
}

/** Shipping is carriage, once an order. */
export interface Shipping {
  by: ShippingBy;
  flat: string;
  /** Weights holds the charge of a parcel up to a weight, rising; Further is each kilogram begun past the last. */
  weights: ByWeight[];
  further: string;
  classes: ShippingClass[];
}

/** Fees are what is paid beside the maker's bill: duty and tax where the order comes in, and the bank. One that is not known is left out, and the quote says so. */
export interface Fees {
  /** percent */
  duty: string;
  /** DutyOnShipping is true where duty falls on the goods with their carriage. */
  dutyOnShipping: boolean;
  /** percent of goods, carriage and duty */
  tax: string;
  /** once an order */
  bankFee: string;
  /** percent of goods and carriage */
  bankPercent: string;
}

/** Counting is how far the pieces that come may differ from those ordered, percent. */
export interface Counting {
  over: string;
  /** pieces too many are billed */
  overBilled: boolean;
  under: string;
  /** UnderBilled is true of a maker who bills pieces that did not come. */
  underBilled: boolean;
}

/** NamedBy says what a named charge is counted by. */
export type NamedBy = "order" | "piece" | "colour" | "design";

/** NamedCharge is a charge of any other name that falls on every order. */
export interface NamedCharge {
  name: string;
  rate: string;
  by: NamedBy;
}

/** Notes are what a maker says that is not price, in the person's words. */
export interface Notes {
  /** what is done about faulty pieces */
  faults: string;
  /** what the maker keeps: die, drawings, colour samples */
  keeps: string;
  other: string;
}

/** PriceList is one maker's prices. A rate that is not known is asked for only by an order that needs it. */
export interface PriceList {
  id: string;
  name: string;
  /** made up for the demo; the page says so */
  invented: boolean;
  /** ISO 4217 code */
  currency: string;
  /** decimals of the currency */
  minorDigits: number;
  /** unit prices by size and quantity */
  pieces: PiecePrices;
  /** fewest pieces */
  least: Least;
  /** what is cut once */
  die: DiePrices;
  /** making, plating, thickness */
  metal: MetalPrices;
  /** enamels, fills, print */
  colours: ColourPrices;
  /** cut-outs, parts, chains */
  shape: ShapePrices;
  /** posts, fastenings, lettering */
  back: BackPrices;
  /** dome, packaging, backing card */
  pack: PackPrices;
  /** rounds of the maker's drawing */
  proofs: ProofPrices;
  /** ways to have it sooner or later */
  delivery: Delivery;
  /** carriage */
  shipping: Shipping;
  /** bank, duty, tax */
  fees: Fees;
  /** more or fewer pieces than ordered */
  count: Counting;
  /** charges of any other name */
  named: NamedCharge[];
  /** what is not price */
  notes: Notes;
}

/** Exchange is a rate that the person typed, of the day it was typed for. */
export interface Exchange {
  /** ISO 4217 code of the second currency */
  currency: string;
  /** its decimals */
  minorDigits: number;
  /** of the second currency for 1 of the list's */
  rate: string;
  /** as typed; empty when not said */
  dated: string;
}

/** Terms are the wishes that hold for a whole order. */
export interface Terms {
  /** name of one of the list's ways; empty for the usual */
  delivery: string;
  /** name of one of the list's classes; empty for the first */
  shipping: string;
  /** proof rounds a design; 0 for those in the price */
  rounds: number;
  /** Seconds is how many pieces in a hundred are set aside for flaws, and Free how many of the others are given away. */
  seconds: number;
  free: number;
  /** Into is a second currency to show the total in; absent for none. */
  into?: Exchange;
}

/** ColourEntry is one colour that a maker offers. */
export interface ColourEntry {
  code: string;
  /** Name may be empty. */
  name: string;
  /** RGB is the nearest that sRGB holds. */
  rgb: RGB8;
  /** Lab is CIELAB under D65 where the list gave CIELAB; elsewhere RGB says all. */
  lab?: [number, number, number];
  /** Outside is true for a colour that sRGB, and so this screen, cannot show. */
  outside?: boolean;
}

/** ColourList is one maker's codes. */
export interface ColourList {
  name: string;
  entries: ColourEntry[];
}

/** Order holds designs and the price lists to judge them by. */
export interface Order {
  name: string;
  designs: Design[];
  priceLists: PriceList[];
  /** ID of the one in use */
  priceList: string;
  terms?: Terms;
  /** ColourList is the maker's codes, once the person has brought them. */
  colourList?: ColourList;
}

/** SalesTax is a tax on sales. */
export interface SalesTax {
  percent: string;
  /** prices hold it; otherwise it is put on top and passed on */
  included: boolean;
  /** it falls on what buyers pay for posting too */
  onPosting: boolean;
}

/** PostClass is one class of post: what it takes, and its price a parcel. */
export interface PostClass {
  name: string;
  /** at most */
  grams: number;
  /** thick at most */
  mm: number;
  price: string;
}

/** Wrapping is what lies round a piece: an envelope a parcel, a backing card and a bag a piece. */
export interface Wrapping {
  envelope: string;
  card: string;
  bag: string;
  envelopeGrams: number;
  cardGrams: number;
  bagGrams: number;
  /** both sides together, card and bag included */
  envelopeMM: number;
}

/** ChannelKind is the way in which pieces reach people. */
export type ChannelKind = "online" | "fair" | "wholesale" | "consignment" | "set" | "gift" | "cause";

/** GivenOf says of what a share is passed on. */
export type GivenOf = "price" | "left";

/** Channel is one way in which pieces reach people. Shares and rates are in percent, amounts in the plan's currency. */
export interface Channel {
  kind: ChannelKind;
  name: string;
  /** of the pieces without flaw */
  share: string;
  /** Price is what a buyer pays for a piece, for a set the whole of it; 0 is the plan's. A gift has none. */
  price: string;
  /** Pieces is how many of this order go into one sale, one parcel, one set; 0 is 1. */
  pieces: number;
  /** Cut is the share of the price that a shop keeps: wholesale, consignment. */
  cut: string;
  /** FeePercent is of all that a buyer pays, posting and tax included; FeeFixed is for each sale. */
  feePercent: string;
  feeFixed: string;
  /** Once is paid however little sells: a table, the way there, a card reader. A channel without a share that sells no seconds either is not gone to. */
  once: string;
  /** Posted says that each sale goes by post; PostPaid is what the buyer pays for that. */
  posted: boolean;
  postPaid: string;
  /** Others is what the rest of a set costs, and OthersGrams weighs. */
  others: string;
  othersGrams: number;
  /** Given is the share passed on to a cause. */
  given: string;
  givenOf: GivenOf;
  /** the plan's tax on sales applies */
  taxed: boolean;
}

/** Selling is an order and how its pieces are to reach people. */
export interface Selling {
  currency: string;
  minorDigits: number;
  /** as delivered */
  pieces: number;
  /** of the maker, landed */
  bill: string;
  /** of a piece, where a channel has none of its own */
  price: string;
  /** SecondsShare is the percent of pieces with a small flaw. They sell by the channel with the number SecondsBy, SecondsOff percent cheaper; with a number below 0 they are kept. */
  secondsShare: string;
  secondsOff: string;
  secondsBy: number;
  tax: SalesTax;
  /** Grams and MM are of one piece with its fastening, not packed. */
  grams: number;
  mm: number;
  classes: PostClass[];
  packing: Wrapping;
  channels: Channel[];
}

/** GuessKind says how a person guesses at demand. */
export type GuessKind = "three" | "orders";

/** DemandPrior is what was thought before the first order came: as if so many orders had come in so many days. It is the shape and the rate of a gamma distribution of the orders a day. */
export interface DemandPrior {
  /** above 0 */
  orders: number;
  /** above 0 */
  days: number;
}

/** Guess is what a person thinks of demand. */
export interface Guess {
  kind: GuessKind;
  /** Low, Likely and High are for ByThree; all numbers from Low to High can happen. */
  low: number;
  likely: number;
  high: number;
  /** Orders have come in DaysGone days, DaysLeft are left: for ByOrders. */
  orders: number;
  daysGone: number;
  daysLeft: number;
  prior: DemandPrior;
}

/** VersionWish is the demand thought of for one version, by the IDs of its design and its own. */
export interface VersionWish {
  design: string;
  version: string;
  guess: Guess;
}

/** OwnStake is what the person says that a piece brings; what is absent follows from what is left after costs. */
export interface OwnStake {
  each?: string;
  second?: string;
  leftover?: string;
  missed?: string;
  free?: number;
}

/** Date is a day as it travels: "2027-02-06" (ISO 8601), or empty for none. */
export type Date = string;

/** PresaleDays is the days of a pre-sale: the die is cut when its money is there. */
export interface PresaleDays {
  /** last day on which an order is taken */
  closes: Date;
  /** Payout is the days of the calendar until the money arrives. */
  payout: number;
  /** Posting is the working days here that it takes to pack and post all orders, and Carriage the days of the calendar until the last one arrives. */
  posting: number;
  carriage: number;
}

/** PresaleGoal is a further design: priced by the list as the one on the sheet is, with a die of its own, or by a bill of one step as typed. */
export interface PresaleGoal {
  name: string;
  /** its first run */
  quantity: number;
  /** by the list */
  alike: boolean;
  each: string;
  once: string;
}

/** PresalePlan is a pre-sale as the person wants it. */
export interface PresalePlan {
  days: PresaleDays;
  /** Each is what a paid pre-order leaves; absent, it follows from what is left online. */
  each?: string;
  goals: PresaleGoal[];
}

/** SellingPlan is what the person states of selling an order. What is absent is as the tool proposes it. */
export interface SellingPlan {
  /** Left is how pieces reach people. Its bill and pieces are the order's, and a weight of 0 is that of the pin. */
  left?: Selling;
  guesses?: VersionWish[];
  stake?: OwnStake;
  presale?: PresalePlan;
}

/** CardKind is a size of card. */
export type CardKind = "" | "bank" | "inches" | "free";

/** HangKind is the hole that a card hangs by. */
export type HangKind = "" | "round" | "slot";

/** CardHang is the hole to hang by. It lies in the middle of the card's width. */
export interface CardHang {
  kind?: HangKind;
  /** W and H are its width and height, W alone for a round one; 0 for the usual. */
  w?: MM;
  h?: MM;
  /** Down is from the top of the card to the middle of the hole; 0 for the usual. */
  down?: MM;
}

/** Align says which end of a line stands at its place. */
export type Align = "" | "left" | "right";

/** CardText is one line of the person's own. */
export interface CardText {
  words: string;
  /** size of type, 1/72 inch */
  points: number;
  strong?: boolean;
  align?: Align;
  /** of its left end, middle or right end */
  x: MM;
  /** of its base line */
  y: MM;
  rgb: RGB8;
}

/** CardArt is the person's own picture on the card. */
export interface CardArt {
  /** image/png or image/jpeg */
  type: string;
  /** the file, in base64 (RFC 4648, section 4) */
  data: string;
  /** px */
  w: number;
  h: number;
  /** X and Y are its upper left, Wide its width on the card. */
  x: MM;
  y: MM;
  wide: MM;
}

/** CardPaper is what cards are printed on. */
export type CardPaper = "" | "a4" | "letter";

/** CardSheet is how cards lie on paper. */
export interface CardSheet {
  paper?: CardPaper;
  /** between the cuts of two cards; twice the bleed at least */
  gutter?: MM;
}

/** BackingCard is what the person chose of a backing card; its zero value is an upright business card, blank, with the pin where the tool puts it. */
export interface BackingCard {
  kind?: CardKind;
  /** lying, wider than high */
  across?: boolean;
  /** W and H are the sides of a free card as it is seen. */
  w?: MM;
  h?: MM;
  /** Corner is the radius that its corners are rounded to; 0 for square. */
  corner?: MM;
  /** printed over all of it; nil for bare board */
  ground?: RGB8;
  /** Pin is where the middle of the silhouette's box sits; nil for where the tool puts it. */
  pin?: [MM, MM];
  /** NoAid leaves out the light outline by which the pin is placed. */
  noAid?: boolean;
  /** Hole is how wide the holes of the posts are; 0 for the usual. */
  hole?: MM;
  hang?: CardHang;
  /** Bleed is how far print runs over the cut, and Safe how far inside it words keep; nil for the usual. */
  bleed?: MM;
  safe?: MM;
  texts?: CardText[];
  picture?: CardArt;
  sheet?: CardSheet;
}

/** Units is what lengths are written in. */
export type Units = "" | "in";

/** Format is a size of sheet. */
export type Format = "a4" | "letter";

/** PictureShape is the shape of a picture. */
export type PictureShape = "" | "portrait" | "close";

/** ShopGround is what a pin lies on. */
export interface ShopGround {
  rgb: RGB8;
  /** Margin is the least room beside the pin, as a share of the picture's short side, 0 to 0.4. */
  margin: number;
  shape: PictureShape;
  /** Shadow is how dark the soft shadow is, 0 for none, to 1. */
  shadow: number;
}

/** PapersPlan is what the person chose for the papers. */
export interface PapersPlan {
  units?: Units;
  /** NeedBy is the day by which the pins are wanted, as ISO 8601 has it; empty for none. */
  needBy?: string;
  /** Note is the person's own sentence to the maker. */
  note?: string;
  /** of the sheets; empty for A4 */
  paper?: Format;
  ground?: ShopGround;
  /** Pixels is the long side of the pin in its pictures; 0 for the usual. */
  pixels?: number;
}

/** Sure is a confidence in percent, above 0 and below 100, such as 95. */
export type Sure = number;

/** Grade is what a piece is good for. */
export type Grade = "first" | "second" | "reject";

/** FlawKind is a kind of fault. */
export type FlawKind = "" | "missing" | "overflow" | "colour" | "bubbles" | "dust" | "scratch" | "stain" | "bent" | "loose" | "link" | "sharp";

/** FlawedPiece is one piece that is no first. */
export interface FlawedPiece {
  /** second or reject */
  grade: Grade;
  flaw: FlawKind;
  /** Photos are the names under which the page keeps pictures of it. */
  photos?: string[];
}

/** ParcelRow is what came of one version. */
export interface ParcelRow {
  /** ID */
  design: string;
  version: string;
  name: string;
  ordered: number;
  /** Received is how many came, where they were counted apart. At 0 as many came as were graded once the count is complete, and as many as ordered until then. */
  received?: number;
  firsts: number;
  flawed?: FlawedPiece[];
}

/** Parcel is one delivery of one maker, as the person counts it. */
export interface Parcel {
  id: string;
  maker: string;
  /** the day of the order */
  ordered?: Date;
  /** the day it was to be here */
  due?: Date;
  arrived?: Date;
  /** Agreed is the share of flawed pieces agreed with the maker, percent, and Within the days of the calendar within which the maker is told. */
  agreed: number;
  within: number;
  sure: Sure;
  /** Complete says that all there was has been counted. */
  complete?: boolean;
  rows: ParcelRow[];
}

/** MoveKind is why pieces come into the stock or leave it. */
export type MoveKind = "had" | "replacement" | "gift" | "wholesale" | "fair" | "sold";

/** StockMove is one entry of the book. */
export interface StockMove {
  day: Date;
  design: string;
  version: string;
  kind: MoveKind;
  /** first or second */
  grade: Grade;
  count: number;
}

/** StockBook is what a person enters of the pieces after the parcel. */
export interface StockBook {
  moves: StockMove[];
  /** Weeks is how far back the pace of sales is looked at. */
  weeks: number;
  /** LeadDays is the days of the calendar from ordering again to having the pieces carded, where no calendar of the order is given. */
  leadDays: number;
}

/** DaySpan is a run of days, both ends among them. */
export interface DaySpan {
  from: Date;
  to: Date;
  name: string;
}

/** Workdays says on which days somebody works. */
export interface Workdays {
  /** Country is the code of a country whose public holidays are kept; empty for none. */
  country: string;
  /** Weekend lists the days of the week without work, 1 for Monday to 7. */
  weekend: number[];
  /** own days off, and closures */
  off: DaySpan[];
  /** days worked though they would be free */
  worked: Date[];
}

/** Whose says whose days a step is counted in. */
export type Whose = "here" | "maker" | "every";

/** OrderStep is one step of an order; the next begins on the day after it ends. */
export interface OrderStep {
  key: string;
  name: string;
  days: number;
  /** rounds, for proofs; 0 is once */
  times: number;
  by: Whose;
}

/** DeliveryWay is one delivery choice of a maker. Its days take the place of those of making and carriage; 0 leaves them. */
export interface DeliveryWay {
  name: string;
  making: number;
  carriage: number;
  /** what the whole order costs with it */
  total: string;
}

/** Schedule is an order's calendar as a person sets it. With a launch day the steps are counted back from it; they are counted forward in any case, from the start or from today, whichever is later. */
export interface Schedule {
  today: Date;
  /** empty when open */
  launch: Date;
  /** empty for today */
  start: Date;
  here: Workdays;
  maker: Workdays;
  steps: OrderStep[];
  /** Slack is the working days here that are kept free before the launch. */
  slack: number;
  /** Doing is the key of the step in hand, those before it being done, and Done how many of its days are over. Empty is the first step. */
  doing: string;
  done: number;
  /** Ways are the delivery choices there are, and Way the one in use; below 0 for none. */
  ways: DeliveryWay[];
  way: number;
  /** Unpriced says that what the ways cost is not known: nothing is said of it. */
  unpriced?: boolean;
  /** Currency and MinorDigits are for what a delivery choice saves. */
  currency: string;
  minorDigits: number;
  /** LunarYear says that the maker closes round the lunar new year, so that a year without known day is spoken of. */
  lunarYear: boolean;
}

/** Point is a place, of the pin or of a picture, px. */
export interface Point {
  x: number;
  y: number;
}

/** ProofHow is how a pin was found in a proof, or is to be. */
export interface ProofHow {
  /** Box is where the pin lies, px of the picture: x0, y0, x1, y1; absent for anywhere. */
  box?: [number, number, number, number];
  /** Choose is the spot to take, counted from 1; 0 for the one that suits best. */
  choose?: number;
  /** Places set by hand, on the pin (working px) and in the picture (px), in the same order: two or more. Exact lets three stretch the pin and four turn it in perspective; Refine betters what was set by the edges. */
  pin?: Point[];
  picture?: Point[];
  exact?: boolean;
  refine?: boolean;
  /** Slant lets a pin that was found by itself lie in perspective, as in a photograph. */
  slant?: boolean;
}

/** MarkedMeasure is a bar or a dimension line in a picture. */
export interface MarkedMeasure {
  from: Point;
  to: Point;
  mm: MM;
}

/** Said is what a proof says beside its picture, as the person reads it, and what was marked in it. */
export interface Said {
  /** Size as stated, by its measure; MM 0 where none is. */
  size: Size;
  /** Measure is a length between two places of the picture; MM 0 where none is. */
  measure: MarkedMeasure;
}

/** Tolerances say from when on a picture counts as showing something else. They are this tool's choice and the person's to change. */
export interface Tolerances {
  /** Outline is how far the outline may lie off its place, mm, over OutlineRun mm. */
  outline: MM;
  outlineRun: MM;
  /** A line may be wider or narrower by Line mm, and by LineShare of its width, over LineRun mm; and be missing over LineGone mm. */
  line: MM;
  lineShare: number;
  lineRun: MM;
  lineGone: MM;
  /** Colour is how far a colour may lie off, CIEDE2000. */
  colour: number;
  /** Added is the least length, mm, of something that was not asked for. */
  added: MM;
  /** Post is how far a post may stand off its place, mm. */
  post: MM;
  /** Stated and Drawn are the shares by which a size that is stated, or is measured in the picture, may be off; Stretch that by which width and height may be. */
  stated: number;
  drawn: number;
  stretch: number;
}

/** Warp takes a place of the pin, in working px, to one of the picture: a projective map, row by row. Of a flat proof the last row is 0 0 1. */
export type Warp = [number, number, number, number, number, number, number, number, number];

/** Fit is how the pin lies on a picture. */
export interface Fit {
  warp: Warp;
  /** Turn is clockwise, degrees, Mirrored whether left and right are changed over. */
  turn: number;
  mirrored: boolean;
  /** PerMM is how many px of the picture a mm of the pin takes. */
  perMM: number;
  /** Rms is how far the pin's edges lie from those of the picture, as the root of their mean square without the farthest tenth; Share is the share of the outline that lies within Within of its place. */
  rms: MM;
  share: number;
  within: MM;
  /** Edges is the share of all edges that were found at all. */
  edges: number;
  good: boolean;
  words: string;
}

/** DeviationKind is the kind of a difference between what was asked for and what is shown. */
export type DeviationKind = "mirrored" | "size-stated" | "size-drawn" | "stretched" | "outline-moved" | "part-missing" | "part-moved" | "cut-out-filled" | "line-missing" | "line-added" | "line-thinner" | "line-thicker" | "areas-merged" | "area-split" | "area-recoloured" | "patch-added" | "post-missing" | "post-moved" | "post-added" | "area-unfilled" | "colours-swapped";

/** Verdict is one of three answers. */
export type Verdict = "holds" | "fails" | "cannot-tell";

/** Deviation is one place where a picture shows something else than was asked for. */
export interface Deviation {
  number: number;
  kind: DeviationKind;
  /** X and Y are its place in working px of the pin, Left and Top in mm from the left and the top of the silhouette as seen from the front, and Box in px what it takes. */
  x: number;
  y: number;
  left: MM;
  top: MM;
  box: [number, number, number, number];
  /** Path follows it, x and y in turn, in working px; empty where the box says all. */
  path?: number[];
  /** Behind says that it lies on the view from behind. */
  behind?: boolean;
  /** Flat is the colour concerned, sizing.Outside for none; Other the second one. */
  flat: FlatID;
  other: FlatID;
  /** every area of the flat */
  whole?: boolean;
  /** Asked and Shown in words, and as what they are: a length in mm, a colour. */
  asked: string;
  shown: string;
  askedMM?: MM;
  shownMM?: MM;
  askedRGB?: RGB8;
  shownRGB?: RGB8;
  /** CIEDE2000 */
  deltaE?: number;
  length?: MM;
  /** Verdict is Fails where the two differ by more than the tolerance, CannotTell where the picture is too coarse to say. */
  verdict: Verdict;
  words: string;
}

/** ProofChoice is what the person decided of a difference. */
export interface ProofChoice {
  number: number;
  /** ask for it; else it is accepted */
  change: boolean;
  note?: string;
}

/** ProofRound is a proof as it is kept with the project: what it said, how it was laid, in what it differed and what was decided. */
export interface ProofRound {
  /** also of its picture */
  id: string;
  /** ID of the design */
  design: string;
  /** ID of the version */
  version: string;
  round: number;
  maker?: string;
  /** of the file */
  name?: string;
  /** as ISO 8601 has it */
  dated?: string;
  /** Photo says that it is a photograph of a finished pin. */
  photo?: boolean;
  /** White is a place of white card in the photograph, px. */
  white?: Point;
  how: ProofHow;
  said: Said;
  tolerances?: Tolerances;
  fit?: Fit;
  differences: Deviation[];
  choices?: ProofChoice[];
}

/** MakerRate is what 1 of a currency is in the one compared in. */
export interface MakerRate {
  currency: string;
  rate: string;
  dated: string;
}

/** Plans is not for the pin's program: what of it comes is passed over. */
export interface Plans {
  selling?: SellingPlan;
  /** Card is the backing card, and Papers what was chosen for the papers. */
  card?: BackingCard;
  papers?: PapersPlan;
  /** Parcels are what came, as counted, and Ledger what became of the pieces. */
  parcels?: Parcel[];
  ledger?: StockBook;
  /** Calendar is without today and without delivery choices: these go along with every question. */
  calendar?: Schedule;
  /** Proofs are the makers' proofs, in the order they came. */
  proofs?: ProofRound[];
  /** Quotes are makers' quotes as they were typed, one a line, and Rates the exchange that makers are compared at. */
  quotes?: string;
  rates?: MakerRate[];
}

/** OrderPlace is one version of one design, by their places in the project. */
export interface OrderPlace {
  design: number;
  version: number;
}

/** Project is everything the person has made: the shape of the project file, of the wire and of the page's one value. */
export interface Project {
  format: number;
  order: Order;
  plans?: Plans;
  /** At is which version of which design lies on the sheet; the first of the first when absent. */
  at?: OrderPlace;
}

/** LimitsFor is the usual limits for one making and fill. */
export interface LimitsFor {
  making: Making;
  fill: Fill;
  limits: Limits;
}

/** FinishesFor is the finishes that flats of a role can have, the plain one first. */
export interface FinishesFor {
  role: Role;
  finishes: Finish[];
}

/** BackUsual is the usual value of everything about the back that can be changed. */
export interface BackUsual {
  hold: Hold;
  depths: Depths;
  packing: Packing;
}

/** NamedDistance is a distance and where one looks from so. */
export interface NamedDistance {
  name: string;
  mm: MM;
}

/** Thresholds is what counts as told apart: data the person can change. */
export interface Thresholds {
  /** Gap is the least angle, minutes of arc, that a normal eye parts. */
  gap: number;
  /** Letter and LetterBest are the least and the preferred height of capitals, minutes of arc. */
  letter: number;
  letterBest: number;
  /** Noticed is the S-CIELAB difference from which a detail is noticed. */
  noticed: number;
  /** Colour is the CIEDE2000 from which two enamels are told apart, and Metal the same for an enamel and each reflection of the metal beside it. */
  colour: number;
  metal: number;
  /** Lightness is the WCAG 2 contrast ratio from which two colours are told apart by lightness alone, standing in for dim light. */
  lightness: number;
}

/** EyeUsual is what the sight of a pin starts from. */
export interface EyeUsual {
  /** Distances are those of the job, nearest first. */
  distances: NamedDistance[];
  acuity: number;
  thresholds: Thresholds;
  /** Cloths to pin it on, the usual one first. */
  cloths: NamedColour[];
  /** The bounds of what can be asked for. */
  leastDistance: MM;
  greatestDistance: MM;
  leastAcuity: number;
  greatestAcuity: number;
}

/** Hello is what the page needs before any drawing. */
export interface Hello {
  maxCount: number;
  workingLongSide: number;
  /** how much of a file the header call wants to see */
  headerBytes: number;
  platings: Plating[];
  /** Starting is a set of colours that sit well together, to recolour with. */
  starting: NamedColour[];
  /** Blank is a project with the default price list and one empty design. */
  blank: Project;
  /** Limits holds the usual limits: struck soft, struck hard, cast soft, cast hard, in this order. */
  limits: LimitsFor[];
  /** LeastSize and GreatestSize bound the size of a pin. */
  leastSize: MM;
  greatestSize: MM;
  /** Finishes is what can set a fill or a metal apart, by role. */
  finishes: FinishesFor[];
  back: BackUsual;
  eye: EyeUsual;
}

/** HeaderAsk comes with the first bytes of a file. */
export interface HeaderAsk {
  fileName: string;
  /** of the whole file, bytes */
  size: number;
}

/** Header is what a file says of itself before it is decoded. */
export interface Header {
  /** png, jpeg, webp, avif, gif, svg */
  format: string;
  /** as shown, after EXIF rotation; 0 when an SVG does not say */
  w: number;
  h: number;
  /** Space is the canvas colour space to decode in: "srgb", or "display-p3" when the file carries another profile. */
  space: string;
  /** WorkW and WorkH are the working raster the file should be drawn at. */
  workW: number;
  workH: number;
}

/** Part is a part of a file in shares (0..1) of its width and height: x0, y0, x1, y1. The zero value means the whole file. */
export type Part = [number, number, number, number];

/** SecondPicture is the other half of a drawing brought as lines and colours. It comes at the working raster of the first. */
export interface SecondPicture {
  fileName: string;
  fileW: number;
  fileH: number;
  space: string;
}

/** OpenAsk comes with the pixels (RGBA, straight alpha, 4*W*H bytes), or with those of two pictures, one after the other. */
export interface OpenAsk {
  id: string;
  fileName: string;
  w: number;
  h: number;
  fileW: number;
  fileH: number;
  space: string;
  ground: GroundChoice;
  /** Finest is the long side, px, at which the whole file could be drawn: its own, or any for a vector drawing; 0 when it cannot be drawn again. */
  finest: number;
  /** Part is what the pixels show of the file, when an answer asked for it. */
  part: Part;
  /** Second is there when lines and colours come apart, in either order. */
  second?: SecondPicture;
}

/** Closer asks for the drawing again: the part of its file that is drawn, at another working raster. */
export interface Closer {
  part: Part;
  workW: number;
  workH: number;
}

/** Opened is what the engine made of a drawing, and what it proposes. */
export interface Opened {
  drawing: string;
  /** Closer is there when the drawing is small on its canvas and its file can show it better: nothing else is answered, open it again so. */
  closer?: Closer;
  w: number;
  h: number;
  /** Ground is what was found: clear, paper or none. */
  ground: GroundChoice;
  groundRGB: RGB8;
  groundNote: string;
  /** share of visible pixels outside sRGB */
  clipped: number;
  /** Suggested is the number of enamels the drawing has, and why. */
  suggested: number;
  reason: string;
  /** Lined is true when dark line work was found and turned to metal, and Layers when the lines came on a picture of their own. */
  lined: boolean;
  layers: boolean;
  notes: string[];
  /** Design is a design ready to be shown: count, recipes, size and making proposed. */
  design: Design;
}

/** GroundAsk looks at an opened drawing again with another choice of background. */
export interface GroundAsk {
  drawing: string;
  ground: GroundChoice;
}

/** Picked names one version of one design of a project. */
export interface Picked {
  project: Project;
  design: number;
  version: number;
}

/** ReviseAsk lays an opened drawing on the picked design: its next revision, or one of its own that another took the place of. */
export interface ReviseAsk {
  picked: Picked;
  /** open already */
  drawing: string;
}

/** Revised is the picked design with the drawing on its sheet. */
export interface Revised {
  design: Design;
  /** Changed is the share (0..1) of what is drawn that differs, Places in how many places. */
  changed: number;
  places: number;
  /** Words says what changed and what carried over, and Lost what does not fit, a sentence each. */
  words: string;
  lost: string[];
}

/** ThumbnailAsk asks for a small picture of an opened drawing, as brought; the answer comes with RGBA pixels (straight alpha). */
export interface ThumbnailAsk {
  drawing: string;
  /** px, 16..512; a smaller drawing comes as it is */
  longSide: number;
}

/** Thumbnail is the size of the pixels that come with it. */
export interface Thumbnail {
  w: number;
  h: number;
  /** Clear is true when one sees through part of it. */
  clear: boolean;
  /** what it shows, for those who cannot see it */
  words: string;
}

/** Options of a reduction. */
export interface Options {
  /** Count is the number of enamel flats wanted, 1..12 (MaxCount); fewer are given when the drawing has fewer. */
  count: number;
  /** RolesOff treats every flat as an enamel, lines included, so that Count is the number of flats in all (1..MaxFlats). */
  rolesOff?: boolean;
  edits: Edit[];
}

/** FlatsAsk asks for the flat drawing. */
export interface FlatsAsk {
  drawing: string;
  options: Options;
}

/** Flat is one flat colour of a separation. */
export interface Flat {
  id: FlatID;
  name: string;
  rgb: RGB8;
  role: Role;
  locked: boolean;
  /** Share of the drawing without its background, 0..1. */
  share: number;
}

/** Spot is a place well inside an area, for a callout to point at. */
export interface Spot {
  flat: FlatID;
  x: number;
  y: number;
  /** areas of this flat */
  pieces: number;
}

/** FlatCode is the maker's code of one flat, and the name beside it, if any. */
export interface FlatCode {
  flat: FlatID;
  code: string;
  named: string;
  /** Drawn is the colour of the flat in the drawing, whatever the version makes of it. */
  drawn: RGB8;
}

/** Flats is the flat drawing without its pixels. */
export interface Flats {
  w: number;
  h: number;
  /** enamels in it */
  count: number;
  flats: Flat[];
  /** Spots gives, for each flat in order, a place well inside its largest area. */
  spots: Spot[];
  /** Codes is what the version calls flats in a maker's list. */
  codes?: FlatCode[];
}

/** Viewing is how a pin is looked at. */
export interface Viewing {
  /** from the eye */
  distance: MM;
  /** Acuity is decimal visual acuity (ISO 8596): 1 for a normal eye, 0.5 for one that needs everything twice as large. */
  acuity: number;
}

/** Item is one version of one design in an order, as far as a price depends on it. */
export interface Item {
  design: string;
  version: string;
  /** Die is the same for items that share a die; the design's name when empty. */
  die: string;
  /** NewDie is false on a reorder, and DieAge then says how many months ago the die was cut. Versions of one die may all say that it is new: one pays. */
  newDie: boolean;
  dieAge: number;
  longest: MM;
  mean: MM;
  /** enamel flats; metal is not one */
  enamels: number;
  fill: Fill;
  /** Making, Plating and Thickness are those in the price when empty. */
  making: Making;
  plating: PlatingID;
  thickness: MM;
  /** Fancy is the finish of each enamel that is set apart, and Printed the number of colours printed on top. */
  fancy: Finish[];
  printed: number;
  /** holes through the metal */
  cutOuts: number;
  /** parts that hang from each other; 0 and 1 are one */
  parts: number;
  rings: number;
  chains: number;
  /** dies beside the first */
  furtherDies: number;
  posts: number;
  fastening: Fastening;
  /** the back bears lettering or a mark */
  stamped: boolean;
  dome: boolean;
  /** a kind of the list; empty for none */
  packaging: string;
  /** backing card from the maker */
  card: boolean;
  /** Weight of a piece as the maker sends it; 0 when not known. */
  weight: Grams;
  /** Quantity is the pieces of this version. */
  quantity: number;
}

/** Wanted is what is asked for at one time. */
export interface Wanted {
  items: Item[];
  terms: Terms;
}

/** BuysAsk asks what each colour buys for a picked version. */
export interface BuysAsk {
  picked: Picked;
  /** Viewing, when given, also asks what an eye would see of each colour at the pin's size, from Noticed (S-CIELAB) on. */
  viewing?: Viewing;
  noticed?: number;
  /** Order and Item are as in ChoicesAsk: prices are then those of all of it. */
  order?: Wanted;
  item?: number;
}

/** SeenLoss is what one count of enamels loses to an eye at the pin's size. */
export interface SeenLoss {
  /** Mean and Worst are S-CIELAB between the drawing and the flats, over the enamel: all of it, and its worst-matched tenth. */
  mean: number;
  worst: number;
  /** Step is the greatest S-CIELAB difference from the count before; 0 for the first. */
  step: number;
  /** Unseen is true when nobody could see the step from the count before. */
  unseen: boolean;
}

/** Buy is one count of enamels. */
export interface Buy {
  count: number;
  /** CIEDE2000, mean over enamel pixels */
  mean: number;
  /** CIEDE2000, mean of the worst tenth */
  worst: number;
  total: string;
  perPiece: string;
  /** a piece, to draw and not to show; 0 when not known */
  each: number;
  /** the step from the count before */
  words: string;
  swatches: RGB8[];
  /** Seen is there when a viewing was asked for. */
  seen?: SeenLoss;
}

/** Buys is the loss and the price at each count. */
export interface Buys {
  rows: Buy[];
  /** Included is the number of enamels in the unit price. */
  included: number;
}

/** CodesAsk asks which entries of a list the colours of a picked version are near to. */
export interface CodesAsk {
  picked: Picked;
  list: ColourList;
}

/** Nearness is a plain word for how far apart two colours are. */
export type Nearness = "same" | "hard to tell" | "close" | "clearly different" | "another colour";

/** CodeMatch is an entry of a list beside a colour. */
export interface CodeMatch {
  entry: ColourEntry;
  /** of the entry in its list, from 0 */
  index: number;
  /** CIEDE2000 */
  de: number;
  distance: Nearness;
  /** Lean says which way the entry differs, such as "a little darker and redder"; empty where the eye could not say. */
  lean: string;
}

/** TakenCode is the code a flat has taken. */
export interface TakenCode {
  code: string;
  named: string;
  /** Recoloured is true when the flat is shown in the code's colour. */
  recoloured: boolean;
  /** Match is missing when the list has no such code. */
  match?: CodeMatch;
}

/** FlatCodes is one flat beside a list. */
export interface FlatCodes {
  flat: FlatID;
  name: string;
  /** RGB is the flat's own colour, before that of any code. */
  rgb: RGB8;
  nearest: CodeMatch[];
  taken?: TakenCode;
}

/** SharedCode is a code that more than one flat falls on. */
export interface SharedCode {
  code: string;
  flats: FlatID[];
  words: string;
}

/** ApartCode is the code of its own that a flat could have. */
export interface ApartCode {
  flat: FlatID;
  match: CodeMatch;
}

/** Codes is the colours of a version beside a maker's list. */
export interface Codes {
  /** Rows has every flat that is filled or printed, in the order of the flats. */
  rows: FlatCodes[];
  /** Shared has the codes that more than one flat falls on. */
  shared: SharedCode[];
  /** Apart gives every flat a code of its own; none when nothing is shared, or when the list has too few. */
  apart: ApartCode[];
  apartWords: string;
}

/** CheckAsk asks for everything that follows from a picked version. */
export interface CheckAsk {
  picked: Picked;
}

/** Length is a length that is shown: as a number to draw with, and in words. */
export interface Length {
  mm: MM;
  inches: number;
  /** "27.2 mm" */
  inMM: string;
  /** "1.07 in" */
  inInches: string;
}

/** Measures is the measures of a silhouette, to be shown. */
export interface Measures {
  w: Length;
  h: Length;
  longest: Length;
  mean: Length;
  /** Width by height, the unit said once: "35.5 × 38 mm". */
  inMM: string;
  inInches: string;
}

/** PxPerMM is a scale: working pixels per millimetre. */
export type PxPerMM = number;

/** Kind is the kind of a trouble spot. */
export type Kind = "thin-line" | "narrow-area" | "fades-out" | "rounded-corners" | "no-line" | "no-edge" | "gap" | "open-area" | "small-area" | "pinhole" | "metal-island" | "solid-metal" | "small-lettering" | "small-cut-out" | "clutch-shows" | "loose-part" | "grown-together" | "weak-eye" | "thin-bridge" | "sharp-tip" | "long-arm";

/** Finding is a trouble spot: where a limit is broken, what was measured there and what the limit is. Places are in working pixels of the separation. */
export interface Finding {
  kind: Kind;
  flat: FlatID;
  /** Other is what lies on the other side of NoLine, NoEdge and Gap: a flat or Outside, which it is for every other kind. */
  other: FlatID;
  /** X and Y are the worst place; the box holds the whole spot. */
  x: number;
  y: number;
  x0: number;
  y0: number;
  x1: number;
  y1: number;
  /** Ends are two places, x and y in turn, for Gap, OpenArea, FadesOut, LoosePart, GrownTogether and LongArm; 0 for every other kind. */
  ends: [number, number, number, number];
  /** Path is the centreline of the spot, x and y in turn, thinned for drawing. */
  path: number[];
  /** of the centreline */
  length: MM;
  /** the least width measured */
  thinnest: MM;
  /** the median width */
  typical: MM;
  /** Area in mm2, of the kinds that say so; 0 for the others. */
  area: number;
  /** Angle in degrees, of SharpTip, and Force in newtons, of LongArm; 0 for the others. */
  angle?: number;
  force?: number;
  /** Count is how many places or parts one finding sums up, at least 1. */
  count: number;
  /** half-width of what the measurement cannot tell */
  error: MM;
  limit: MM;
  verdict: Verdict;
  /** NeedPx is the long side in pixels of a drawing that could tell; 0 unless the verdict is CannotTell. */
  needPx: number;
}

/** Lies is what most of a mark lies on, which says how the letter is made. */
export type Lies = "raised" | "sunk" | "printed" | "outside";

/** Lettered is what a mark says at a size. */
export interface Lettered {
  mark: LetterMark;
  lies: Lies;
  height: MM;
  /** Least is the height that the maker holds, 0 where none is asked. */
  least: MM;
  verdict: Verdict;
  /** HoldsFrom is the size, by the design's measure, from which it holds: 0 where none is asked, or no size does. */
  holdsFrom: MM;
}

/** Room is what an added eye finds at its place. */
export type Room = "" | "off" | "thin" | "touches" | "hole";

/** HangingEye is one eye on the pin. */
export interface HangingEye {
  /** working px */
  x: number;
  y: number;
  /** of the hole, px */
  across: number;
  /** metal that is added round it, px; 0 of a drawn one */
  rim: number;
  drawn: boolean;
  /** Left and Top are of its middle, from the left and the top of the drawn outline as seen from the front. */
  left: Length;
  top: Length;
  room: Room;
  /** Problem says what is wrong with its place; empty when nothing is. */
  problem: string;
}

/** Loop is one ring or link of a chain as it lies on the drawing, in working px. */
export interface Loop {
  /** its middle */
  x: number;
  y: number;
  /** Long is its outer length along Angle (radians, from x to y), Wide its outer width as it is seen, turned to the eye or not, Wire the thickness. */
  long: number;
  wide: number;
  wire: number;
  angle: number;
  /** a ring, not a link */
  ring?: boolean;
}

/** Hanging is one join as it hangs. */
export interface Hanging {
  upper: HangingEye;
  lower: HangingEye;
  /** Ring and Links are as they are used, and Drop is how far apart the middles of the eyes then hang. */
  ring: Length;
  links: number;
  drop: Length;
  loops: Loop[];
  says: string;
  /** Problem is what keeps it from hanging so; empty when nothing does. */
  problem: string;
}

/** HeldParts is how a pin that is drawn in several parts holds together. */
export interface HeldParts {
  /** as drawn, specks left out */
  count: number;
  /** Choice is what the person said; where nothing was said of parts that bridges join, they are one. */
  choice: PartsChoice;
  joins: Hanging[];
  /** Loose is how many parts nothing joins to the rest. */
  loose: number;
  says: string;
}

/** ProposedLine is one stretch of it, which the recipe of a kind builds. */
export interface ProposedLine {
  kind: RecipeKind;
  /** x and y in turn */
  path: number[];
}

/** Proposal is the metal that recipes propose for a drawing without lines. */
export interface Proposal {
  /** Words says why, how long in all, and how wide. */
  words: string;
  lines: ProposedLine[];
}

/** Joining is what happens to a flat drawing when it must do with one enamel fewer. */
export interface Joining {
  /** the flat that takes the other in */
  keep: FlatID;
  /** the flat that is lost */
  goes: FlatID;
  /** Becomes is the colour of both afterwards. */
  becomes: RGB8;
  /** Share of the drawing, without its background, that was Goes: 0..1. */
  share: number;
  /** Shift is how far the lost colour is from what it becomes: CIEDE2000. */
  shift: number;
}

/** Next is the two colours that join when one enamel fewer is asked for. */
export interface Next {
  joining: Joining;
  words: string;
}

/** Post is a place on the back, in mm from the left and top of the silhouette as seen from the FRONT; seen from the back, left and right are mirrored. */
export interface Post {
  x: MM;
  y: MM;
}

/** Mass is what a pin weighs, alone and packed; every range runs over what is not known of its making. */
export interface Mass {
  /** Pin is without fasteners, recesses and fill allowed for. */
  pin: Range;
  /** Worn is with what is fixed to its back: posts with their pads, a bar, a magnet. */
  worn: Range;
  /** Packed is with clutches, card and sleeve, and Thick is how thick that lies, mm. */
  packed: Range;
  thick: Range;
  /** All is the mass of every piece of the order, packed. */
  all: Range;
  pieces: number;
  /** Filled is the share of the silhouette that is cut down and filled. */
  filled: number;
}

/** Moments are principal second moments of area about the centre, mm4. */
export interface Moments {
  least: number;
  most: number;
}

/** Form is the geometry of a silhouette, all its parts together. */
export interface Form {
  /** widest span between parallel lines */
  widest: MM;
  /** narrowest */
  narrow: MM;
  /** length to breadth, from the principal moments */
  aspect: number;
  /** of its length, degrees from level, clockwise as seen from the front, -90..90 */
  axis: number;
  /** of area */
  moments: Moments;
  /** connected parts, specks left out */
  parts: number;
  /** left and right are mirror images */
  mirrored: boolean;
  says: string;
}

/** Answer is the answer to a yes-or-no question over a range. */
export type Answer = "yes" | "no" | "either";

/** Hang is how a pin hangs on cloth, by the model that hang states. A figure is a range over what is not known of cloth and clutch, and over the mass. */
export interface Hang {
  posts: number;
  /** Above is how far the middle of the posts stands above the balance point, Beside how far that lies to their right as seen from the FRONT. */
  above: MM;
  beside: MM;
  /** Rest is how far from upright it comes to rest without friction, degrees, on one post; 0 on more. */
  rest: number;
  /** Holds is how far to either side of that friction can hold it, degrees; 180 is any way up. */
  holds: Range;
  /** Askew is how far it turns when it is pinned upright and let go, degrees. */
  askew: Range;
  /** Droop is how far its top leans forward, degrees; 90 has flopped over. */
  droop: Range;
  /** Pull is m g L, the most that gravity can turn it with, and Grip what friction can hold, N mm; 0 on more than one post. */
  pull: Range;
  grip: Range;
  /** Load is the share of the weight on each of two posts that stand side by side; below 0 where one is lifted. Empty where the lever does not tell. */
  load: number[];
  /** Straight: pinned upright it stays so. Flat: it does not lean to be seen. Knocked: knocked askew it stays askew. */
  straight: Answer;
  flat: Answer;
  knocked: Answer;
}

/** Advice is how many posts a badge should have, where, and why. */
export interface Advice {
  /** what the tool advises, 1..3 */
  count: number;
  /** what is shown: the person's choice, or Count */
  chosen: number;
  /** places for Chosen posts */
  posts: Post[];
  /** diameter drawn for the clutch */
  clutch: MM;
  /** diameter of the soldered pad */
  pad: MM;
  /** one sentence, with numbers */
  reason: string;
  /** further sentences behind "why?" */
  why: string[];
  /** Hidden is false when no place hides the clutch wholly behind the piece. */
  hidden: boolean;
  /** of the pin alone, the likeliest value */
  weight: Grams;
  /** silhouette, mm2 */
  area: number;
  /** centre of mass, mm from left and top of the silhouette */
  centre: [MM, MM];
  fastening: Fastening;
  /** Bar is the length of a pin bar, whose middle is the one place in Posts; 0 for every other fastening. */
  bar: MM;
  /** Upright says that the bar stands upright, where it is not hidden level. */
  upright: boolean;
  /** ByHand says that Posts were set by hand; Proposal is then the tool's own, and Worse says in what they fall behind it, empty when in nothing. */
  byHand: boolean;
  proposal: Post[];
  worse: string[];
  /** Shows is, for each post, how far its clutch shows beyond the edge, mm. */
  shows: MM[];
  mass: Mass;
  form: Form;
  hang: Hang;
  /** OnOne is how it would hang from one post, when it has more. */
  onOne?: Hang;
  /** HangSays puts Hang into words, the model after it. */
  hangSays: string[];
  model: string[];
  /** MassSays puts Mass into words. */
  massSays: string[];
}

/** Place is a place on the back as seen from behind, to the half millimetre: from the left and the top of the silhouette, and from its middle. */
export interface Place {
  /** No is what it is called by: from the left as seen from behind, or from the top where they stand more above each other than side by side; from 1. */
  no: number;
  left: Length;
  top: Length;
  /** Beside is right of the middle as seen from behind, Below below it; mm below 0 are left of it and above it. */
  beside: Length;
  below: Length;
  /** FromMiddle says Beside and Below in words, in mm and in inches: "4.5 mm left, 3 mm above". */
  fromMiddle: string;
  fromMiddleInches: string;
}

/** Fixing is one fastening as it would stand on a pin. */
export interface Fixing {
  fastening: Fastening;
  /** "two screw backs" */
  name: string;
  posts: Post[];
  /** length of a pin bar; 0 for the others */
  bar: MM;
  /** the bar stands upright */
  upright: boolean;
  /** diameter or breadth to be hidden */
  cover: MM;
  /** it stays behind the piece */
  hidden: boolean;
  /** how it fits, with numbers */
  says: string;
  caution: string;
}

/** StampedMark is the artist's own mark as it stands on the back. */
export interface StampedMark {
  w: MM;
  height: MM;
  /** the narrowest stroke or gap that is held */
  least: MM;
  /** HoldsFrom is the height from which no stroke and no gap is narrower. */
  holdsFrom: MM;
  holds: boolean;
}

/** Stamped is where lettering and the artist's own mark go on the back. */
export interface Stamped {
  /** Middle is the middle of its block, mm from the left and top of the silhouette as seen from the FRONT; W and H its sides. */
  middle: Post;
  w: MM;
  h: MM;
  /** of capitals; 0 for a mark alone */
  height: MM;
  /** how wide the strokes of a letter are */
  stroke: MM;
  /** Largest is how high capitals, or a mark alone, can be, up to a usual height or what was asked; 0 when there is no room. */
  largest: MM;
  limit: MM;
  verdict: Verdict;
  lines: string[];
  raised: boolean;
  says: string;
  /** Mark stands at the top of the block, in its middle; nil for none. */
  mark?: StampedMark;
}

/** Matter is what a caution is about. */
export type Matter = "small-parts" | "magnets" | "sharp" | "nickel" | "lead-and-cadmium" | "law";

/** Rule is a clause and its number, as far as it was read. */
export interface Rule {
  /** US, US-CA (California) or EU */
  place: string;
  clause: string;
  what: string;
  /** empty when the clause has no number */
  value: string;
  unit: string;
  /** the same in another unit */
  value2: string;
  unit2: string;
  /** Note is the scope that matters here, in our words. */
  note: string;
  /** Memory is true when part of it was not read but remembered: look it up. */
  memory: boolean;
}

/** Caution is one of them. */
export interface Caution {
  matter: Matter;
  /** Grave is true when the buyers stated are among those it is meant for. */
  grave: boolean;
  says: string;
  do: string;
  rules: Rule[];
  /** further sentences, behind "why?" */
  more: string[];
}

/** Line is one line of a quote. Amount is rounded once, half away from zero, to the currency's minor units. */
export interface Line {
  /** stable: see the Key constants; more than one line may have it */
  key: string;
  /** in words */
  what: string;
  /** place of its item in the order; -1 for the order's own */
  item: number;
  count: number;
  /** exact rate, not rounded */
  each: string;
  /** Amount is below 0 where a delivery takes something off. */
  amount: string;
  /** As shown: "EUR 33.00", and "300 × EUR 0.11" for what is charged by the piece. */
  says: string;
  sumSays: string;
}

/** OpenEntry is an unknown entry of a price list that an order hangs on. */
export interface OpenEntry {
  /** its place in the list, as in CellError */
  cell: string;
  /** what it would pay for */
  what: string;
  /** as a sentence */
  says: string;
}

/** Converted is a total in the second currency. It is not a bill: a bank's rate differs, so it is marked "about". */
export interface Converted {
  currency: string;
  total: string;
  perPiece: string;
  totalSays: string;
  eachSays: string;
  /** RateSays is the rate and its day: "at EUR 0.92 for USD 1, of 2026-05-04". */
  rateSays: string;
}

/** Landed is what a piece costs once it is here: the total over the pieces without flaws, and over those of them that are sold and not given away. */
export interface Landed {
  good: number;
  sold: number;
  /** PerGood and PerSold are derived ("about"). */
  perGood: string;
  perSold: string;
  /** As shown; SoldSays is empty when nothing is left to sell. */
  goodSays: string;
  soldSays: string;
  /** Short is the same when as few come as the maker may send; absent when none may be missing. */
  short?: Landed;
  /** Words says how it was counted. */
  words: string;
}

/** Quote is what an order costs by one price list. */
export interface Quote {
  currency: string;
  minorDigits: number;
  invented: boolean;
  pieces: number;
  lines: Line[];
  /** Total is the sum of the shown amounts. */
  total: string;
  /** PerPiece is Total by Pieces to one place more than the currency ("about"). */
  perPiece: string;
  /** As shown: "EUR 339.00", "about EUR 3.390". */
  totalSays: string;
  eachSays: string;
  /** Notes are sentences that matter to the choice, such as a larger quantity that costs less in all. */
  notes: string[];
  /** Needs is what has to be known first; the total leaves it out. */
  needs: OpenEntry[];
  /** Into is the total in the second currency, and Landed what a piece costs once flaws and gifts are off. */
  into?: Converted;
  landed?: Landed;
}

/** Check is the whole check of a picked version. */
export interface Check {
  flats: Flats;
  w: MM;
  h: MM;
  longest: MM;
  mean: MM;
  /** the same as they are shown */
  shown: Measures;
  /** working px per mm */
  scale: PxPerMM;
  /** box of the silhouette, working px */
  outline: [number, number, number, number];
  findings: Finding[];
  /** Lettering says how each marked capital holds, in the design's order. */
  lettering?: Lettered[];
  /** Parts is how it holds together; absent when it is drawn in one piece. */
  parts?: HeldParts;
  /** Proposal is metal that was not drawn and that waits for a yes; absent when there is none. */
  proposal?: Proposal;
  /** Next is what happens with one enamel fewer; absent when none can go. */
  next?: Next;
  /** HoldsFrom is the smallest size, by the design's measure, at which no line or area fails as drawn; 0 when none up to 120 mm does. */
  holdsFrom: MM;
  /** GrowTo is HoldsFrom when the design is smaller than that; else its mm are 0. */
  growTo: Length;
  /** ShrinkTo is the largest size that holds when the design is larger than that; else its mm are 0. */
  shrinkTo: Length;
  back: Advice;
  /** Places is where the posts of Back stand as seen from behind, in order. */
  places: Place[];
  /** Fixings is how each fastening would stand on it, posts first. */
  fixings: Fixing[];
  /** Stamp is where lettering goes on the back, when some is asked for; StampProblem says why it cannot. */
  stamp?: Stamped;
  stampProblem: string;
  /** Cautions are those its parts and its buyers call for. */
  cautions: Caution[];
  quote: Quote;
  /** QuoteProblem says why there is no quote; empty when there is one. */
  quoteProblem: string;
  /** Verdict is the one-line answer: can it be made? */
  verdict: Verdict;
  words: string;
}

/** QuoteAsk asks for the price alone. */
export interface QuoteAsk {
  picked: Picked;
}

/** ChoicesAsk asks what each change near at hand costs. */
export interface ChoicesAsk {
  picked: Picked;
  /** Order is all that is ordered together with the picked version, which is its item at Item; absent when it is ordered alone. */
  order?: Wanted;
  item?: number;
}

/** Choice is what one change costs from where the design stands. */
export interface Choice {
  /** colour+, colour-, size+, size-, fill, fancy+, fancy-, printed+, printed-, post+, post-, card, quantity */
  key: string;
  what: string;
  /** Known is false when the list has no price for it; Why says why. */
  known: boolean;
  why: string;
  /** PerPiece and Total are differences, negative when the change saves. */
  perPiece: string;
  total: string;
  /** The same as shown: "EUR 0.11 more", "the same". */
  pieceSays: string;
  totalSays: string;
}

/** Choices is what each change costs from where the picked version stands; no rows when the version itself has no price. */
export interface Choices {
  rows: Choice[];
}

/** OrderItemsAsk asks what every version of every design is to a price list. It needs the drawings; what it answers is all that the calls of the order need. */
export interface OrderItemsAsk {
  project: Project;
}

/** OrderItems is a project as an order. */
export interface OrderItems {
  order: Wanted;
  /** Places names the version behind each item, in their order. */
  places: OrderPlace[];
  /** Left says which designs are not in it, and why. */
  left: string[];
}

/** View is which picture of a design is wanted. */
export type View = "struck" | "back" | "flat" | "drawing" | "next" | "changed";

/** PictureAsk asks for a picture; the answer comes with RGBA pixels (straight alpha). */
export interface PictureAsk {
  picked: Picked;
  view: View;
  /** of the picture, px, 16..4096 */
  longSide: number;
}

/** Picture places the pixels that come with it: a point (x, y) of the working raster lies at (x*Scale+DX, y*Scale+DY) of the picture; in ViewBack x is first mirrored about the middle of the outline's box. */
export interface Picture {
  w: number;
  h: number;
  scale: number;
  dx: number;
  dy: number;
}

/** LookAsk asks for the struck pin on cloth; the answer is a Picture and comes with RGBA pixels (opaque). */
export interface LookAsk {
  picked: Picked;
  /** of the picture, px, 16..4096 */
  longSide: number;
  cloth: RGB8;
  viewing: Viewing;
  /** Plain is true for what a lens would see: nothing is filtered. */
  plain: boolean;
}

/** ReadingAsk asks what of a picked version can be read from a distance. */
export interface ReadingAsk {
  picked: Picked;
  viewing: Viewing;
  cloth: RGB8;
  thresholds: Thresholds;
  /** AsDrawn leaves out what recipes build, so that another size is a lookup. */
  asDrawn?: boolean;
}

/** Detail is the kind of a thing that is to be read. */
export type Detail = "line" | "edge" | "area" | "lettering";

/** Reading is one detail that is not surely parted from a distance: places are in working pixels. What is wide enough everywhere is not told. */
export interface Reading {
  detail: Detail;
  flat: FlatID;
  /** Beside is what lies on either side at the worst place: flats, or sizing.Outside. */
  beside: [FlatID, FlatID];
  x: number;
  y: number;
  x0: number;
  y0: number;
  x1: number;
  y1: number;
  path: number[];
  length: MM;
  /** Measured is the least width, or the height of capitals, and Arcmin the angle it subtends; Error is the half-width of what the measurement cannot tell. */
  measured: MM;
  arcmin: number;
  error: MM;
  /** Need is what would be parted; Better, of lettering, what is preferred, else 0. */
  need: MM;
  better: MM;
  /** Parted says whether it is told from what is beside it. */
  parted: Verdict;
  /** PartedFrom is the size, by the design's measure, from which it is; its mm are 0 when no pin is large enough. */
  partedFrom: Length;
  /** Difference is what leaving it out would change, S-CIELAB, and Noticed whether that is seen. NoticedFrom is the size from which it is, as PartedFrom. */
  difference: number;
  noticed: Verdict;
  noticedFrom: Length;
  /** NeedPx is the long side of a drawing that could tell; 0 unless a verdict is CannotTell. */
  needPx: number;
  /** Built is true of metal that a recipe built: it is as wide at every size. */
  built: boolean;
}

/** ReadingAt is what can be read from one distance. */
export interface ReadingAt {
  /** "in the hand"; the distance itself for any other */
  name: string;
  viewing: Viewing;
  /** Gap is the least width that is parted, Letter and LetterBest the heights of capitals. */
  gap: Length;
  letter: Length;
  letterBest: Length;
  /** Findings are the details that are not surely parted, the worst first. */
  findings: Reading[];
  /** Fail and Unsure count them by verdict. */
  fail: number;
  unsure: number;
  /** Lines is the share of the length of all metal, and Areas that of all centrelines of enamel, that is parted: 0..1. */
  lines: number;
  areas: number;
  /** ReadFrom is the size, by the design's measure, from which every detail is parted; its mm are 0 when no pin is large enough. */
  readFrom: Length;
  words: string;
}

/** ReadingAnswer is what can be read from the distance asked for, and in short from those of the job. */
export interface ReadingAnswer {
  at: ReadingAt;
  /** of EyeUsual.Distances, without findings */
  rows: ReadingAt[];
}

/** NeighboursAsk asks which colours of a picked version are told apart where they meet. */
export interface NeighboursAsk {
  picked: Picked;
  thresholds: Thresholds;
}

/** PairKind says how two colours meet. */
export type PairKind = "touching" | "across-line" | "metal";

/** Vision is a kind of colour vision. */
export type Vision = "normal" | "protan" | "deutan" | "tritan";

/** Contrast is how far two colours are apart by both measures. */
export interface Contrast {
  colour: number;
  lightness: number;
}

/** Seen is a pair as one kind of eye sees it. */
export interface Seen {
  vision: Vision;
  /** Colour is CIEDE2000 and Lightness the WCAG 2 ratio: with metal, the lesser at its dark and its bright reflection. */
  colour: number;
  lightness: number;
  /** Dark and Bright are the two reflections; absent without metal. */
  dark?: Contrast;
  bright?: Contrast;
  /** ByColour and ByLightness say whether the two are told apart. */
  byColour: Verdict;
  byLightness: Verdict;
}

/** Pair is two colours that meet. In a pair with metal, B is sizing.Outside's neighbour BuiltMetal, whatever metal flats the drawing has: all are plated alike. */
export interface Pair {
  kind: PairKind;
  a: FlatID;
  b: FlatID;
  /** X, Y is a place where they meet, working px. */
  x: number;
  y: number;
  /** Length is how far they meet in all; Width that of the line between, else 0. */
  length: MM;
  width: MM;
  /** Seen is by the normal eye first, then by each deficiency. */
  seen: Seen[];
}

/** Ranked is a plating as it suits a design. */
export interface Ranked {
  plating: PlatingID;
  name: string;
  /** Chosen is the plating of the version; Fits is false where it cannot go with the fill. */
  chosen: boolean;
  fits: boolean;
  /** Fail is the enamels that read as one with it, by colour, and Dim those that do by lightness alone. */
  fail: FlatID[];
  dim: FlatID[];
  /** Share of where enamel meets metal that is told apart by colour, 0..1. */
  share: number;
  /** Decides is the enamel that comes nearest to it, and by how much, CIEDE2000. */
  decides: FlatID;
  nearest: number;
  words: string;
}

/** Idea is a change that keeps the design and tells a pair apart: one of Recipe, Edit and Plating is there. */
export interface Idea {
  /** Pair is its place in the list of pairs. */
  pair: number;
  recipe?: Recipe;
  edit?: Edit;
  plating?: PlatingID;
  /** Shift is how far a colour moves, CIEDE2000; 0 for the others. */
  shift: number;
  /** Fixes and Breaks count the pairs that it parts by colour, and that it makes read as one. */
  fixes: number;
  breaks: number;
  words: string;
}

/** Neighbours is every pair of colours that meet, the worst first, the platings for this design, the best first, and what could be changed. */
export interface Neighbours {
  pairs: Pair[];
  platings: Ranked[];
  ideas: Idea[];
  words: string;
}

/** GlanceAsk asks for the answer at a glance for a picked version. */
export interface GlanceAsk {
  picked: Picked;
  viewing: Viewing;
  thresholds: Thresholds;
  /** as in ReadingAsk */
  asDrawn?: boolean;
}

/** SizeRange is the sizes from one to another. A To of 0 mm is no end. */
export interface SizeRange {
  from: Length;
  to: Length;
}

/** Glance is the sizes of a design on one scale, by its own measure. */
export interface Glance {
  /** of the scale */
  from: MM;
  to: MM;
  /** Made is the sizes at which it can be made, and MadeSays the same in words. */
  made: SizeRange[];
  madeSays: string;
  /** ReadFrom is the least at which it can be read from the distance; its mm are 0 when no pin is large enough. LettersFrom is the same for lettering alone, 0 also when there is none. */
  readFrom: Length;
  lettersFrom: Length;
  asked: Length;
  /** CanMake and CanRead are of the size asked for. */
  canMake: boolean;
  canRead: boolean;
  words: string;
}

/** TouchAsk asks what lies under a place of the picture. */
export interface TouchAsk {
  picked: Picked;
  x: number;
  y: number;
}

/** Gap is an opening where a line does not close. */
export interface Gap {
  /** x0 y0 x1 y1, in shares of the drawing's width and height */
  ends: [number, number, number, number];
  width: Length;
  /** Open is true when it leads out of the drawing, false into another area. */
  open: boolean;
}

/** Touch is what lies under a place. */
export interface Touch {
  /** false on the background */
  hit: boolean;
  flat: FlatID;
  /** mm2, of the one closed area or connected line */
  area: number;
  /** local width */
  width: MM;
  /** a line or edge that a recipe built */
  built: boolean;
  /** Gap is where a fill of this place would leak; absent when it would not. */
  gap?: Gap;
  /** Lines drawn or erased by hand, which a fill of this place minds: they go with the edit. */
  lines?: HandLine[];
}

/** OffersAsk asks for the repairs of one trouble spot of a picked version, as the check told it. */
export interface OffersAsk {
  picked: Picked;
  finding: Finding;
  /** Side is of each picture of the place, px, 16..1024; 0 for no picture. */
  side: number;
}

/** Alteration is how much of a drawing repairs alter. */
export interface Alteration {
  mm2: number;
  /** of the pin, 0..1 */
  share: number;
  words: string;
}

/** MendOffer is one repair, and how much of the drawing it changes. */
export interface MendOffer {
  /** to be added to the design's */
  recipes: Recipe[];
  /** what is done, in a sentence */
  words: string;
  /** Gentle is true when it is made with the others when all are repaired. */
  gentle: boolean;
  change: Alteration;
}

/** Offers is the repairs that do for a trouble spot, the gentlest first; none when it needs the artist. The answer comes with RGBA pixels of the place, Side by Side each (straight alpha): as it is, then as each offer leaves it. */
export interface Offers {
  offers: MendOffer[];
  /** Why there is none; empty when there are some. */
  why: string;
  /** 0 when no pictures come */
  side: number;
  /** Across is how much of the pin a picture shows, each way. */
  across: Length;
}

/** MendAllAsk asks for everything to be repaired. */
export interface MendAllAsk {
  picked: Picked;
}

/** Unmended is a place that needs the artist, and why. */
export interface Unmended {
  /** as it is after the repairs */
  finding: Finding;
  why: string;
}

/** MendAll is the recipes to add to the design's, what they change, and what is left. */
export interface MendAll {
  recipes: Recipe[];
  /** places that failed */
  before: number;
  left: Unmended[];
  change: Alteration;
}

/** Search is how far the search for the smallest size that holds as repaired has come: between two sizes, in steps of half a millimetre. It is taken one size at a time, so that other questions can be answered in between. */
export interface Search {
  least: number;
  most: number;
  /** sizes */
  tried: number;
  /** Found is true once Most is known to hold; Done when nothing is left to try. */
  found: boolean;
  done: boolean;
}

/** MendedFromAsk asks for the smallest size that holds as repaired: one size is tried a call. The first comes without a search, each further one with the answer's before it. */
export interface MendedFromAsk {
  picked: Picked;
  search?: Search;
}

/** MendedFrom is how far the search has come. Size is the smallest, by the design's measure, that is known to hold as repaired; its mm are 0 when none is. */
export interface MendedFrom {
  search: Search;
  /** of the search, 0..1 */
  share: number;
  size: Length;
}

/** MarksAsk asks for the trouble spots of a picked version as a picture to lay over the drawing; the answer comes with a PNG file. */
export interface MarksAsk {
  picked: Picked;
}

/** PNGFile is a PNG file that comes with an answer. */
export interface PNGFile {
  w: number;
  h: number;
  fileName: string;
  /** what it shows, for those who cannot see it */
  words: string;
}

/** SizesAsk asks at which sizes a picked design holds as it is drawn. */
export interface SizesAsk {
  picked: Picked;
  /** WhatIf asks for these limits alone, in place of all others. */
  whatIf?: Limits;
}

/** Shares is how much of a drawing fails at a size, 0 to 1: of the length of all metal lines, what is thinner than its limit; of the area of all enamel, what lies in narrow places, and in areas that are too small as a whole. */
export interface Shares {
  lines: number;
  areas: number;
}

/** SizesFor is the sizes that hold for one making and fill. */
export interface SizesFor {
  making: Making;
  fill: Fill;
  limits: Limits;
  name: string;
  /** Now is true for the one that the design stands at. */
  now: boolean;
  /** Ranges are the sizes that hold, rising; none when no size does. */
  ranges: SizeRange[];
  says: string;
  /** Lacks is true where metal is missing, which no size mends. */
  lacks: boolean;
  /** Curve is the share that fails at each size: of the length of all metal lines, and of the area of all enamel. */
  curve: Shares[];
}

/** Sizes is the sizes that hold, for each making. */
export interface Sizes {
  /** the measure of all sizes here */
  by: SizeBy;
  /** Curves begin at From and go on in steps of a millimetre. */
  from: MM;
  to: MM;
  rows: SizesFor[];
}

/** HangAsk asks how the picked version hangs with posts at some places, as one of them is moved: quick enough for every frame of a drag. */
export interface HangAsk {
  picked: Picked;
  /** Posts are in mm from the left and top of the silhouette as seen from the FRONT. */
  posts: Post[];
  /** Moved is the one that is being moved, which snaps to lines of symmetry; -1 for none. */
  moved: number;
}

/** Hung is how it hangs so. */
export interface Hung {
  /** Hand is the places as a design keeps them, after snapping; those of Back are the same in mm. */
  hand: [number, number][];
  back: Advice;
  places: Place[];
}

/** PartsAsk asks what a choice for the parts of a picked version brings with it. */
export interface PartsAsk {
  picked: Picked;
  choice: PartsChoice;
}

/** PartsChosen is what to make of the design: eyes to hang the parts by, or bridges of metal that join them. */
export interface PartsChosen {
  parts: Parts;
  /** all of the design's, bridges added or taken out */
  recipes: Recipe[];
  /** Fits is false when some part found no room for an eye, or no bridge that does. */
  fits: boolean;
  words: string;
}

/** EyesAsk asks how the parts of a picked version hang by some joins, as an eye is moved: quick enough for every frame of a drag. */
export interface EyesAsk {
  picked: Picked;
  joins: Join[];
}

/** Report is what a browser says of the screen and the window that a page is on. Lengths are in its CSS pixels. */
export interface Report {
  /** navigator.vendor: it tells how page zoom shows in the rest */
  vendor: string;
  /** screen.width */
  w: number;
  /** screen.height */
  h: number;
  /** devicePixelRatio */
  ratio: number;
  /** visualViewport.scale, 1 when nothing is pinched */
  pinch: number;
  /** width and height of the page's area, 0 when not told */
  inner: [number, number];
  /** and of its window */
  outer: [number, number];
}

/** Match is an object of known width laid on the screen, and the frame drawn round it. */
export interface Match {
  object: MM;
  /** width of the frame, CSS px */
  px: number;
}

/** ScreenAsk asks how large things are on the screen that the page is on. */
export interface ScreenAsk {
  report: Report;
  /** Kept is the checks that this device keeps, as TrueSize.Keep gave them; any text that is none counts as no check. */
  kept: string;
  /** Match is a check made just now. */
  match?: Match;
}

/** DevicePxPerMM is the scale of a screen: its own pixels per millimetre of glass. */
export type DevicePxPerMM = number;

/** Card is the object to check with. */
export interface Card {
  w: MM;
  h: MM;
  words: string;
}

/** TrueSize is the scale of a screen, and how sure it is. */
export interface TrueSize {
  /** its key: its size in device pixels */
  screen: string;
  devicePerMM: DevicePxPerMM;
  /** CSS px for one mm, by the report */
  perMM: number;
  checked: boolean;
  /** "checked here" */
  words: string;
  /** "shown at its true size on this screen" */
  says: string;
  /** Keep is what the device should keep after a match; empty without one. */
  keep: string;
  card: Card;
}

/** TypedAs is what a typed text stands for. */
export type TypedAs = "length" | "area" | "force" | "angle" | "count" | "amount" | "currency" | "colour" | "percent" | "days";

/** TypedAsk asks what a typed text means. What cannot be read, or lies out of bounds, is refused in words that belong at the field. */
export interface TypedAsk {
  text: string;
  as: TypedAs;
  /** Beside is what stands beside the field and is meant by a bare number: mm or in, a currency's code, "%", "pins". */
  beside: string;
  /** Least and Most bound a length (mm), an area (mm2), a force (N), an angle (degrees), a count, a percentage or days; Most 0 is no bound. */
  least: number;
  most: number;
}

/** Typed is what a typed text means; which field holds it hangs on what it stands for. */
export interface Typed {
  /** a length in mm, an area in mm2, a force in N, an angle in degrees, a count, percent, working days */
  number: number;
  /** an amount or percentage, exactly; a currency's code */
  text: string;
  rgb: RGB8;
  /** how it reads back: "31.8 mm (1.25 in)" */
  words: string;
}

/** StruckAsk asks for a picked version as struck, to be handed to the second program. */
export interface StruckAsk {
  picked: Picked;
}

/** Struck is a picked version with its recipes applied and all that was found of it. Its rasters come as bytes: labels, beside and cover of the separation, W*H of each, and W*H more, 1 where metal was built, when Built is set. */
export interface Struck {
  /** Key names it: whatever changes the version changes the key. */
  key: string;
  /** of the rasters, working px */
  w: number;
  h: number;
  built: boolean;
  /** of the rasters, as this version colours them */
  flats: Flat[];
  design: Design;
  version: Version;
  check: Check;
}

/** Plan is a pin that is not drawn yet. */
export interface Plan {
  /** of its longer side */
  size: MM;
  making: Making;
  fill: Fill;
  limits: Limits;
  /** W and H are the canvas that the artist has, px; 0 takes the one recommended. */
  w: number;
  h: number;
}

/** CanvasAsk asks what a pin that is not drawn yet wants of its drawing. */
export interface CanvasAsk {
  plan: Plan;
}

/** NeedKey names something that a drawing needs. */
export type NeedKey = "line" | "gap" | "edge" | "area" | "cut-out" | "bridge" | "capitals" | "sunk";

/** Need is one limit of the maker on a canvas. */
export interface Need {
  key: NeedKey;
  /** Px is the least whole number of pixels that keeps to the limit, and Exact the limit itself. */
  px: number;
  exact: number;
  mm: MM;
  /** What says what it is ("No brush under"), Size what is asked for in pixels ("8 px") and Beside the same in millimetres ("0.2 mm"). */
  what: string;
  size: string;
  beside: string;
  why: string;
}

/** Fineness says whether a canvas is fine enough for its limits. */
export type Fineness = "fine" | "rough" | "coarse";

/** Canvas is the canvas of a plan, the artist's own or the one recommended, and every limit of the maker in its pixels. */
export interface Canvas {
  w: number;
  h: number;
  /** Recommended is true when the canvas is not the artist's own. */
  recommended: boolean;
  /** PerMM and PerInch are its scale, px; Scale says it. */
  perMM: number;
  perInch: number;
  scale: string;
  /** Size is the pin's longer side, and Box its box on the canvas, width by height. */
  size: Length;
  box: string;
  /** Safe is how far from the pin's outside detail should keep. */
  safe: string;
  needs: Need[];
  /** Fineness judges the canvas, and Says puts that into words; Why tells why the recommended one is, and is empty for the artist's own. */
  fineness: Fineness;
  says: string;
  why: string;
}

/** GuideAsk asks for the guide of a plan; the answer comes with a PNG file. */
export interface GuideAsk {
  plan: Plan;
  /** OnWhite lays white under it; without, one sees through. */
  onWhite: boolean;
}

/** White is the white that CIELAB values hang on. */
export type White = "" | "D50" | "D65";

/** ColourListAsk comes with the bytes of a maker's colour list. */
export interface ColourListAsk {
  /** empty for pasted rows */
  fileName: string;
  /** White is that of CIELAB values in a list that does not say; empty leaves it open. */
  white: White;
}

/** LineProblem is something wrong with one line of a list. */
export interface LineProblem {
  /** from 1, as an editor counts */
  line: number;
  /** Column is what the header calls it, or "column 3"; empty for the whole line. */
  column: string;
  what: string;
  do: string;
  /** Kept is true when the line was taken all the same. */
  kept: boolean;
}

/** ColourListRead is what was read of a list. With no entries in it, the list in use should stay. */
export interface ColourListRead {
  list: ColourList;
  problems: LineProblem[];
  /** problems that are not listed */
  more: number;
  notes: string[];
  /** NeedsWhite is true when the list has to be read again with a White. */
  needsWhite: boolean;
  /** how it went, in a sentence */
  words: string;
}

/** OrderQuoteAsk asks what an order costs by a list. What the list leaves open stands in the quote's needs, and its total is without them. */
export interface OrderQuoteAsk {
  list: PriceList;
  order: Wanted;
}

/** MakersAsk compares price lists for an order over the quantity of one item. */
export interface MakersAsk {
  lists: PriceList[];
  order: Wanted;
  /** its place in the order */
  item: number;
  /** the most pieces looked at, 1..20000 */
  upTo: number;
  /** Currency is the one to compare in; that of the first list when empty. */
  currency: string;
  /** Rates bring the lists' other currencies to it. */
  rates: MakerRate[];
}

/** ComparePoint is a total of the whole order, in the currency compared in. */
export interface ComparePoint {
  quantity: number;
  total: string;
  /** the total, to draw and not to show */
  draw: number;
  totalSays: string;
  /** a piece of the whole order */
  eachSays: string;
}

/** Compared is one maker's totals. Between two points that stand in a row the total is a straight line. */
export interface Compared {
  /** ID */
  list: string;
  name: string;
  invented: boolean;
  points: ComparePoint[];
  /** Now is the point at the quantity asked for; Problem says why there is none. */
  now?: ComparePoint;
  problem: string;
}

/** CheapRange is the quantities at which one maker is cheapest. */
export interface CheapRange {
  from: number;
  to: number;
  /** place in Makers; -1 where none has a price */
  maker: number;
  words: string;
}

/** BeyondPrice is one thing beside the price in which makers may differ. */
export interface BeyondPrice {
  what: string;
  /** one for each maker */
  says: string[];
  /** Differs is false where all say the same. */
  differs: boolean;
}

/** Comparison holds makers against each other over the quantity of one item. */
export interface Comparison {
  currency: string;
  /** in the order given */
  makers: Compared[];
  /** Ranges say who is cheapest from where to where, without gaps. */
  ranges: CheapRange[];
  /** Beyond is what differs, or may, beside the price. */
  beyond: BeyondPrice[];
}

/** ListCheckAsk asks what is wrong in a price list. */
export interface ListCheckAsk {
  list: PriceList;
}

/** CellError is a sentence about one cell of a price list. */
export interface CellError {
  /** its place in the list, such as "pieces.breaks[1].unit[0]" */
  cell: string;
  what: string;
}

/** ListCheck is a sentence for each cell that cannot be used; none when the list can price an order. */
export interface ListCheck {
  cells: CellError[];
}

/** NewListAsk asks for a price list of which nothing is known yet. */
export interface NewListAsk {
  project: Project;
  name: string;
  currency: string;
}

/** NewList is a list with an ID that the project does not have. */
export interface NewList {
  list: PriceList;
}

/** PriceFileAsk reads a price list from text, or from the bytes of a file beside the request. */
export interface PriceFileAsk {
  /** pasted; empty for a file */
  text: string;
  /** Into is the list that a pasted block changes. A text that starts with a "price list" line is a list of its own, and keeps only the ID. */
  into: PriceList;
}

/** Problem is a sentence about one cell of a table. */
export interface Problem {
  /** line of the text, from 1 */
  row: number;
  /** cell of the line, from 1; 0 for the whole line */
  column: number;
  /** what stands there */
  text: string;
  what: string;
}

/** PriceFileRead is what was read. A list with problems must not be used. */
export interface PriceFileRead {
  list: PriceList;
  problems: Problem[];
  notes: string[];
  /** in one sentence */
  words: string;
}

/** PriceFileWriteAsk writes a price list as CSV; the answer comes with its bytes. */
export interface PriceFileWriteAsk {
  list: PriceList;
}

/** PriceFileWritten names the file. */
export interface PriceFileWritten {
  fileName: string;
}

/** FromQuotesAsk proposes a price list from plain quotes, one a line: "150 at 30 mm with 3 colours: 412.50". */
export interface FromQuotesAsk {
  text: string;
  /** Base gives the proposed list its ID, name, currency and decimals. */
  base: PriceList;
}

/** DeducedStatus is how well an entry is known. */
export type DeducedStatus = "fixed" | "between" | "unknown";

/** DeducedEntry is one entry of the proposed list. */
export interface DeducedEntry {
  /** its place in the list, as in run.CellError */
  cell: string;
  what: string;
  status: DeducedStatus;
  /** as proposed; empty for none */
  value: string;
  /** bounds, where they are known */
  low: string;
  high: string;
  /** "EUR 0.11 a piece", "between EUR 0.00 and EUR 52.50" */
  says: string;
}

/** PlainQuote is a quote as a maker gives it: so many pieces, so large, for so much. */
export interface PlainQuote {
  /** as typed */
  text: string;
  quantity: number;
  size: MM;
  /** enamels; 0 when not said, which counts as those in the price */
  colours: number;
  posts: number;
  hard: boolean;
  /** the total holds the die */
  die: boolean;
  /** the total holds the shipping */
  shipping: boolean;
  total: string;
}

/** FurtherQuote is the quote that would settle most. */
export interface FurtherQuote {
  /** without its total */
  quote: PlainQuote;
  words: string;
}

/** QuoteResidual is how far the proposed list is from a quote. */
export interface QuoteResidual {
  /** the quote as typed */
  text: string;
  /** list less quote */
  off: string;
  says: string;
}

/** PlainMistake is a line that cannot be read. */
export interface PlainMistake {
  /** from 1 */
  line: number;
  text: string;
  what: string;
}

/** Deduction is a price list deduced from quotes, and how well it is known. */
export interface Deduction {
  list: PriceList;
  entries: DeducedEntry[];
  next?: FurtherQuote;
  /** Residuals are there where there are more quotes than unknowns. */
  residuals: QuoteResidual[];
  /** Agrees is false when no list gives these totals; the nearest is proposed. */
  agrees: boolean;
  mistakes: PlainMistake[];
  notes: string[];
}

/** PricedOrder is an order and the price list that prices it: all that the calls of the order need to know of pins. */
export interface PricedOrder {
  list: PriceList;
  order: Wanted;
}

/** LeftAsk asks what is left of an order after costs. */
export interface LeftAsk {
  plan: Selling;
  /** Priced, where it is given, fills in currency, pieces and bill of the plan. A plan in the order's second currency keeps it, and the bill is brought to it. */
  priced?: PricedOrder;
}

/** Fault is a sentence about one field that cannot be used as it stands: what is wrong, and what would do. */
export interface Fault {
  /** its place in the request, such as "channels[1].share" */
  field: string;
  what: string;
}

/** Money is one line: what comes in, above 0, or goes out, below. It is rounded once, half away from zero, to minor units. */
export interface Money {
  key: string;
  what: string;
  amount: string;
  says: string;
}

/** ChannelRow is what one channel comes to. */
export interface ChannelRow {
  name: string;
  /** empty for pieces that are kept */
  kind: ChannelKind;
  flawed: boolean;
  /** pieces */
  count: number;
  /** parcels, sets, hands */
  sales: number;
  /** of post, for a full parcel; empty when not posted */
  class: string;
  lines: Money[];
  /** the sum of the lines */
  left: string;
  /** PerPiece is Left by Count to one place more than the currency ("about"). */
  perPiece: string;
  /** Before is what a piece leaves before the maker's bill and before what is paid once, as LeftAfter's Each is over all channels. */
  before: string;
  leftSays: string;
  eachSays: string;
}

/** LeftWhen is what is left when some number of pieces is sold or given. */
export interface LeftWhen {
  pieces: number;
  left: string;
}

/** LeftAfter is what is left of an order. */
export interface LeftAfter {
  rows: ChannelRow[];
  /** lines summed by their key */
  total: ChannelRow;
  /** pieces that find their people */
  out: number;
  says: string;
  /** Covers is the number of pieces from which on nothing is lost any more, when they go to the channels in their shares; below 0 when not even all do. */
  covers: number;
  coversSays: string;
  /** for a chart, rising */
  points: LeftWhen[];
  /** Each and Second are what a piece, and one with a flaw, leaves before the maker's bill and before what is paid once; Once is the latter. They are what the question of how many to order starts from. */
  each: string;
  second: string;
  once: string;
  notes: string[];
}

/** Left is what is left, or what is wrong with the plan; Plan has its fields filled in. */
export interface Left {
  faults: Fault[];
  plan: Selling;
  left?: LeftAfter;
}

/** BillStep is one step of a bill as a person types it: from so many pieces on, Each for every piece and Once in all, the die and the carriage among it. */
export interface BillStep {
  from: number;
  each: string;
  once: string;
}

/** BillOf is a bill by the number of pieces: steps as typed, or, without any, what a price list says of one item of an order in every quantity. */
export interface BillOf {
  steps: BillStep[];
  priced?: PricedOrder;
  /** Items says which of the order's items: one for each version that is asked for, in their order where it is empty; or those that share the pieces of a pre-sale by their quantities, the first where it is empty. */
  items: number[];
}

/** VersionGuess is what is thought of the demand for one version. */
export interface VersionGuess {
  name: string;
  guess: Guess;
}

/** Stake is what a piece brings. Money in exact decimals, of one currency. */
export interface Stake {
  currency: string;
  minorDigits: number;
  /** Each is what a good piece leaves when it is sold, before the maker's bill: price less fees, posting and packing. */
  each: string;
  /** Second is the same for a piece with a small flaw, of which there are SecondsShare percent; all of them find a buyer. */
  second: string;
  secondsShare: string;
  /** Leftover is what a good piece brings that found no buyer, such as by a later clearance; often 0. */
  leftover: string;
  /** Missed is what a buyer who finds none costs in good will; it counts for what is best, not for what is lost in money. */
  missed: string;
  /** Free is the number of good pieces that are given away in any case. */
  free: number;
}

/** DemandAsk asks how many pieces to order. */
export interface DemandAsk {
  bill: BillOf;
  versions: VersionGuess[];
  /** Stake's currency is taken from the price list where that is used, unless it is the order's second one. */
  stake: Stake;
  /** largest order to look at; 0 is the usual */
  most: number;
  /** further orders to tell of; price breaks are told of in any case */
  look: number[];
  /** Apart asks for one version after another, each beside those before it: for a list whose breaks go by version. Otherwise they are one order, of which each further piece goes to the version likeliest to sell it. */
  apart: boolean;
}

/** VersionOutcome is what an order holds of one version. */
export interface VersionOutcome {
  name: string;
  /** to order, flaws included */
  quantity: number;
  /** of these to sell */
  good: number;
  /** on average */
  sold: number;
  /** SellOut is the chance that all sell, TenthLeft that more than a tenth of those to sell is left. */
  sellOut: number;
  tenthLeft: number;
}

/** OrderOutcome is what an order of some size comes to. Chances run from 0 to 1. */
export interface OrderOutcome {
  quantity: number;
  bill: string;
  /** Left is what is left on average when all is paid, Worth the same less the good will of buyers who found none: the best order has the highest Worth. */
  left: string;
  worth: string;
  good: number;
  sold: number;
  leftover: number;
  missed: number;
  sellOut: number;
  tenthLeft: number;
  lose: number;
  /** least number sold that loses nothing; below 0 when not even all */
  covering: number;
  leftSays: string;
  versions: VersionOutcome[];
}

/** LeftAt is one point of a chart. */
export interface LeftAt {
  quantity: number;
  left: string;
}

/** HowMany is the answer. */
export interface HowMany {
  best: OrderOutcome;
  /** Rows are the orders asked for that can be placed, by their size. */
  rows: OrderOutcome[];
  /** for a chart, by the number ordered */
  points: LeftAt[];
  /** wanted on average */
  mean: number;
  /** wanted with a chance of 8 in 10, for one version */
  likely: [number, number];
  /** what the distributions are called, one for each version */
  names: string[];
  says: string;
  notes: string[];
}

/** Demand is the answer: one for all versions together, or one for each; or what is wrong with the question. */
export interface Demand {
  faults: Fault[];
  answers: HowMany[];
  /** all of them in a sentence */
  says: string;
}

/** GoalAsk is a further design of a pre-sale: its first run and its bill. */
export interface GoalAsk {
  name: string;
  quantity: number;
  bill: BillOf;
}

/** PresaleAsk asks how many paid pre-orders cover the bill. */
export interface PresaleAsk {
  name: string;
  bill: BillOf;
  stake: Stake;
  goals: GoalAsk[];
  /** 0 is the usual */
  most: number;
  guess?: Guess;
}

/** GoalRow is one goal of a pre-sale, the first being the design itself. */
export interface GoalRow {
  name: string;
  /** Paid is the least number of paid pre-orders that covers the bill, and Always the number from which on it is always covered: just under a price break a bill can be dearer. Both are below 0 when there is none. */
  paid: number;
  always: number;
  /** Order is how many pieces are then ordered, Bill what all designs so far cost, and Over what is left of the money. */
  order: number;
  bill: string;
  over: string;
  /** of Paid or more; below 0 when nothing is guessed */
  chance: number;
  says: string;
}

/** Goals is the answer to a pre-sale. */
export interface Goals {
  rows: GoalRow[];
  says: string;
}

/** Presale is the answer, or what is wrong with the question. */
export interface Presale {
  faults: Fault[];
  goals?: Goals;
}

/** OrderUsualAsk asks for what an order's days and sales start from, for the years from one to another. */
export interface OrderUsualAsk {
  from: number;
  to: number;
  /** whose holidays to list */
  countries: string[];
}

/** Country is a country, or a part of one, whose public holidays are known. */
export interface Country {
  /** ISO 3166: "GB", "DE-BY" */
  code: string;
  name: string;
  /** what the list is known to lack or to have too much; mostly empty */
  note: string;
}

/** Holiday is a day on which a country does not work. */
export interface Holiday {
  date: Date;
  /** in a language of the country */
  name: string;
}

/** HolidaysOf is the public holidays of one country over the years asked for. */
export interface HolidaysOf {
  code: string;
  known: boolean;
  holidays: Holiday[];
}

/** Closures is when a maker is likely to be closed: a start for ranges that the person corrects. */
export interface Closures {
  spans: DaySpan[];
  /** Unknown holds a sentence for each year whose new year's day the table does not have. */
  unknown: string[];
}

/** OrderUsual is what an order's days and sales start from. */
export interface OrderUsual {
  /** all whose holidays are known */
  countries: Country[];
  holidays: HolidaysOf[];
  /** of a maker */
  closures: Closures;
  steps: OrderStep[];
  slack: number;
  weekend: number[];
  prior: DemandPrior;
  /** Selling, Guess and Presale are invented figures. */
  selling: Selling;
  guess: Guess;
  presale: PresaleDays;
}

/** DaysAsk asks for the calendar of an order. */
export interface DaysAsk {
  schedule: Schedule;
  /** Priced, where it is given, fills in the ways of delivery with their days and totals from the price list, and the one in use from the order. */
  priced?: PricedOrder;
}

/** StepRow is one step in the calendar. Days are empty for a step that takes none or is over. */
export interface StepRow {
  key: string;
  name: string;
  /** in all, rounds counted */
  days: number;
  by: Whose;
  /** First and Last are the days as they would fall from today or the start. */
  first: Date;
  last: Date;
  /** LatestFirst and LatestLast are the latest that still make the launch day with the slack kept. */
  latestFirst: Date;
  latestLast: Date;
  /** Spare is the working days between Last and LatestLast, below 0 when late. */
  spare: number;
  /** Falls and Latest are the two pairs of days in words. */
  falls: string;
  latest: string;
  /** Over names what stands still between First and Last: holidays, closures. */
  over: string[];
  says: string;
}

/** WayRow is what one delivery choice comes to. */
export interface WayRow {
  name: string;
  /** the first day with nothing left to do */
  ready: Date;
  /** Makes says that the launch day is made, and Keeps that the slack is kept too; both are false without a launch day. */
  makes: boolean;
  keeps: boolean;
  /** Saves is against the way in use, or the first; below 0 when it costs more. */
  saves: string;
  says: string;
}

/** FreeKind says why nobody works on a day. */
export type FreeKind = "weekend" | "holiday" | "off";

/** FreeRun is a run of days without work, both ends among them. */
export interface FreeRun {
  from: Date;
  to: Date;
  kind: FreeKind;
  name: string;
}

/** Ruler is the days that a calendar is drawn over, whole weeks from Monday to Sunday, and what is free of them at both ends. */
export interface Ruler {
  from: Date;
  to: Date;
  here: FreeRun[];
  maker: FreeRun[];
}

/** Calendar is the answer to a schedule. */
export interface Calendar {
  rows: StepRow[];
  slack: StepRow;
  /** the first day with nothing left to do */
  ready: Date;
  /** Makes says that the launch day is made, and Keeps with the slack kept. */
  makes: boolean;
  keeps: boolean;
  /** Position is where today stands, in a sentence. */
  position: string;
  ways: WayRow[];
  /** Best is the cheapest way that makes the launch day; below 0 for none. */
  best: number;
  bestSays: string;
  notes: string[];
  ruler: Ruler;
  /** Missing are usual closures of a maker within these days that are not among the maker's days off. */
  missing: DaySpan[];
}

/** Days is the calendar, or what is wrong with the schedule; Schedule has its fields filled in. */
export interface Days {
  faults: Fault[];
  schedule: Schedule;
  calendar?: Calendar;
  /** Unpriced is why nothing is said of what a delivery choice saves; mostly empty. */
  unpriced?: string;
}

/** PromiseAsk asks what day can be promised to those who pay ahead. */
export interface PromiseAsk {
  schedule: Schedule;
  presale: PresaleDays;
  /** Priced, where it is given, fills in the ways of delivery as for the calendar. */
  priced?: PricedOrder;
}

/** PromisedDays is the day that can honestly be named to those who pay ahead. */
export interface PromisedDays {
  closes: Date;
  /** the money is there */
  paid: Date;
  /** counted and carded: packing begins */
  ready: Date;
  posted: Date;
  /** Date is when the last buyer has the pin, the slack of the schedule included: posting is promised by Posted, arrival by Date. */
  date: Date;
  says: string;
  /** Rows are the steps that follow the money. */
  rows: StepRow[];
}

/** Promise is that day, or what is wrong with the question. */
export interface Promise {
  faults: Fault[];
  promise?: PromisedDays;
}

/** CalendarFileAsk asks for the calendar as an iCalendar file. */
export interface CalendarFileAsk {
  /** of the order */
  name: string;
  schedule: Schedule;
}

/** CalendarFile comes with the file's bytes, or says what is wrong. */
export interface CalendarFile {
  faults: Fault[];
  fileName: string;
  /** text/calendar */
  type: string;
}

/** BackMarkAsk comes with the pixels of the artist's own mark (RGBA, straight alpha, 4*W*H bytes). */
export interface BackMarkAsk {
  w: number;
  h: number;
}

/** BackMark is what of them is struck on the back. */
export interface BackMark {
  mark: Mark;
  words: string;
}

/** Worth is what is known of the money of an order: the bill, and how its pieces are to be sold where that was planned. */
export interface Worth {
  currency: string;
  minorDigits: number;
  /** of the maker, landed */
  bill: string;
  /** Selling is how the pieces were to be sold; its bill and pieces are the order's. */
  selling?: Selling;
}

/** ParcelAsk asks how a parcel stands as it is counted so far. */
export interface ParcelAsk {
  parcel: Parcel;
  today: Date;
  /** Worth, where it is given, says what the count does to the money. */
  worth?: Worth;
}

/** FlawCount is how many pieces have a fault of one kind. */
export interface FlawCount {
  kind: FlawKind;
  name: string;
  serious: boolean;
  count: number;
}

/** VerdictKind is how a parcel stands to the share agreed. */
export type VerdictKind = "uncounted" | "within" | "over" | "open";

/** Standing is what can be said of the flawed pieces in a lot. */
export interface Standing {
  kind: VerdictKind;
  /** Allowed is how many the share agreed admits; from Refuse flawed ones among those looked at the lot is over it. */
  allowed: number;
  refuse: number;
  /** Least and Most are the exact one-sided limits of the flawed ones in all. */
  least: number;
  most: number;
  /** Wrongly is the chance, 0 to 1, that a lot with exactly Allowed flawed ones would be refused by as many looks. */
  wrongly: number;
  /** Luck is the chance that a maker whose pieces are flawed in just the share agreed, each for itself, shows this many among as many looked at. */
  luck: number;
  says: string;
  why: string[];
}

/** TallyRow is the count of one version, or of all. */
export interface TallyRow {
  design: string;
  version: string;
  name: string;
  ordered: number;
  received: number;
  /** looked at */
  graded: number;
  firsts: number;
  seconds: number;
  rejects: number;
  /** Known is false while the count goes on: Received is then what was ordered. */
  known: boolean;
  /** Short is what is missing of the order; below 0 when more came. */
  short: number;
  flaws: FlawCount[];
  verdict: Standing;
  /** in words */
  counts: string;
}

/** TallyMoney is what a count does to the money. */
export interface TallyMoney {
  /** Each is what a first costs as it came, and Agreed what one would cost had all that was ordered come with just the share agreed flawed. */
  eachSays: string;
  agreedSays: string;
  says: string;
  /** LeftSays compares what is left after costs with the plan; empty without one. */
  leftSays: string;
}

/** Tally is a parcel counted. */
export interface Tally {
  rows: TallyRow[];
  all: TallyRow;
  says: string;
  /** Tell is the last day on which to tell the maker, and Tells says so; empty without a day of arrival. */
  tell: Date;
  tells: string;
  cautions: string[];
  money?: TallyMoney;
}

/** Flaw is a kind of fault in the words of the trade. A serious one can hurt somebody, so that such a piece is kept from sale whatever share was agreed; Caution then says why. */
export interface Flaw {
  kind: FlawKind;
  name: string;
  serious: boolean;
  caution?: string;
}

/** ParcelUsual is what counting and keeping stock start from. */
export interface ParcelUsual {
  /** percent */
  agreed: number;
  /** days */
  within: number;
  /** percent */
  sure: Sure;
  weeks: number;
  leadDays: number;
  levels: string[];
  /** percent */
  qualities: number[];
}

/** ParcelCounted is the tally, or what is wrong with the count. */
export interface ParcelCounted {
  faults: Fault[];
  tally?: Tally;
  /** the kinds there are */
  flaws: Flaw[];
  usual: ParcelUsual;
}

/** SomeLooked is a look at some pieces of a parcel. */
export interface SomeLooked {
  lot: number;
  looked: number;
  /** of those looked at */
  bad: number;
  sure: Sure;
  /** AtMost is the bad pieces one would put up with, to ask how many to look at. */
  atMost: number;
}

/** LookedAtAsk asks what a look at some pieces says of all. */
export interface LookedAtAsk {
  look: SomeLooked;
}

/** LookRow is what is still possible after a look at some number, all sound. */
export interface LookRow {
  looked: number;
  most: number;
}

/** SomeFound is what a look at some says of all. */
export interface SomeFound {
  least: number;
  /** in all */
  most: number;
  /** of them, among those not looked at */
  unseen: number;
  /** pieces not looked at */
  notSeen: number;
  says: string;
  /** Look is how many to look at, all found sound, to be sure of at most AtMost. */
  look: number;
  lookSays: string;
  rows: LookRow[];
}

/** LookedAt is the answer, or what is wrong with the numbers. */
export interface LookedAt {
  faults: Fault[];
  found?: SomeFound;
}

/** PlanAsk asks for a single sampling plan for normal inspection. */
export interface PlanAsk {
  lot: number;
  level: string;
  /** acceptance quality level, percent */
  quality: number;
}

/** SamplingPlan is what the tables say of one lot. */
export interface SamplingPlan {
  /** by lot and level */
  letter: string;
  /** Resolved is the letter that holds once arrows were followed: they change the number to look at, not only the one to accept. */
  resolved: string;
  /** in the table */
  look: number;
  /** to look at: all, where the table asks for as many or more */
  count: number;
  accept: number;
  refuse: number;
  all: boolean;
}

/** OCPoint is the chance that a lot with some bad pieces is accepted. */
export interface OCPoint {
  bad: number;
  /** of the lot, percent */
  share: number;
  /** 0 to 1 */
  accept: number;
}

/** Planned is the plan, or what is wrong with the question. */
export interface Planned {
  faults: Fault[];
  plan?: SamplingPlan;
  says: string;
  curve: OCPoint[];
}

/** StockName is a version as it is called now. */
export interface StockName {
  design: string;
  version: string;
  name: string;
}

/** LedgerAsk asks what is left of all that came. */
export interface LedgerAsk {
  book: StockBook;
  parcels: Parcel[];
  /** the order's versions */
  names: StockName[];
  today: Date;
  /** Schedule is the order's calendar, where the person keeps one. */
  schedule?: Schedule;
}

/** StockLine is what became of the pieces of one grade. */
export interface StockLine {
  grade: Grade;
  /** by parcels, or had */
  came: number;
  replacements: number;
  gifts: number;
  wholesale: number;
  fair: number;
  sold: number;
  left: number;
}

/** Pace is how fast firsts go to buyers: all that were sold, at the fair and wholesale too, over the last weeks, taken together as one rate. Between is the exact interval of a count that comes at one rate (Garwood), 90 percent. */
export interface Pace {
  sold: number;
  /** looked at */
  days: number;
  perWeek: number;
  /** a week */
  slow: number;
  fast: number;
  says: string;
}

/** Reorder is when to order a version again. */
export interface Reorder {
  /** Out is the day the last first goes at the pace, By the last day to order so that new ones are there then; Early is By at the fast end of the pace, Late at the slow end. */
  out: Date;
  by: Date;
  early: Date;
  /** empty when out of sight */
  late?: Date;
  /** Early and Late in words */
  ends: string;
  /** By is past */
  now: boolean;
  /** Die says that the order can use the die that was cut; DieAge is its age in whole months. */
  die: boolean;
  dieAge: number;
  says: string;
}

/** StockRow is the stock of one version. */
export interface StockRow {
  design: string;
  version: string;
  name: string;
  firsts: StockLine;
  seconds: StockLine;
  pace?: Pace;
  /** Reorder is when to order again; missing where nothing says so. */
  reorder?: Reorder;
  says: string;
}

/** Stock is the book reckoned up. */
export interface Stock {
  rows: StockRow[];
  says: string;
  notes: string[];
}

/** MakerRecord is how a maker did over all parcels of theirs. */
export interface MakerRecord {
  maker: string;
  parcels: number;
  ordered: number;
  graded: number;
  firsts: number;
  /** Share is the firsts among those looked at, percent, and Lo and Hi its exact interval (Clopper and Pearson, 95 percent). */
  share: number;
  lo: number;
  hi: number;
  /** Short is the pieces missing over all parcels, those too many not set against them; Late the days after the day agreed, one for each parcel whose days are known, below 0 before it. */
  short: number;
  late: number[];
  says: string;
}

/** Ledger is the stock and how makers did, or what is wrong with an entry. */
export interface Ledger {
  faults: Fault[];
  stock?: Stock;
  makers: MakerRecord[];
}

/** ClaimAsk asks what to write to the maker. */
export interface ClaimAsk {
  parcel: Parcel;
  today: Date;
}

/** ClaimPhoto is a picture that goes with a claim. */
export interface ClaimPhoto {
  /** as the text has it */
  number: number;
  /** as the page keeps it */
  photo: string;
  caption: string;
}

/** Claim is what to write to the maker. */
export interface Claim {
  /** Asks is false when the count gives nothing to ask for; the text then reports it. */
  asks: boolean;
  text: string;
  photos: ClaimPhoto[];
  tells: string;
}

/** ClaimWritten is that text, or what is wrong with the count. */
export interface ClaimWritten {
  faults: Fault[];
  claim?: Claim;
}

/** FontAsk brings a font for the papers, its TrueType file as bytes; without bytes it asks which are there. */
export interface FontAsk {
  /** of the family */
  name: string;
  /** Strong is true of the heavier weight. */
  strong: boolean;
  /** Place is where it stands among the fonts: a letter is set in the first that has it. */
  place: number;
}

/** Font tells which fonts are there. */
export interface Font {
  places: number[];
}

/** SpecSheetAsk asks for the spec sheet of a version as PDF; the fonts of the papers must be there. */
export interface SpecSheetAsk {
  of: string;
  format: Format;
  units: Units;
  /** ISO 8601, where the person is */
  today: string;
  /** Note is the person's own sentence to the maker. */
  note: string;
}

/** PaperFile names the file that comes with it. */
export interface PaperFile {
  fileName: string;
  type: string;
  /** what it is, in a sentence */
  words: string;
  /** Rows is how many a list has below its head. */
  rows: number;
  /** Notes is what the person must be told of it, a sentence each. */
  notes: string[];
}

/** LayersAsk asks for a version as layers at true size, as SVG or as PDF. */
export interface LayersAsk {
  of: string;
  pdf: boolean;
  /** ISO 8601, where the person is */
  today: string;
}

/** Hand says that the second program has a version at hand. */
export interface Hand {
  key: string;
}

/** AskedAsk asks for a version as the papers in words speak of it. */
export interface AskedAsk {
  /** key of a version that was handed over */
  of: string;
}

/** AskedColour is one colour of a version. */
export interface AskedColour {
  /** from 1, metal last */
  no: number;
  flat: FlatID;
  name: string;
  role: Role;
  rgb: RGB8;
  code: string;
  named: string;
  finish: Finish;
  /** Share of the drawing without its background, 0..1. */
  share: number;
}

/** AskedPlace is where a post stands as seen from behind, from the middle of the pin. */
export interface AskedPlace {
  no: number;
  inMM: string;
  inInches: string;
}

/** AskedSpot is a trouble spot and where it lies: mm from the left and the top of the silhouette as seen from the FRONT. */
export interface AskedSpot {
  finding: Finding;
  no: number;
  /** of the flat it lies in; empty for none */
  colour: string;
  left: MM;
  top: MM;
}

/** Asked is one version of one design as the papers in words speak of it. */
export interface Asked {
  design: string;
  designId: string;
  version: string;
  size: Size;
  w: MM;
  h: MM;
  making: Making;
  base: BaseMetal;
  thickness: MM;
  plating: string;
  limits: Limits;
  colours: AskedColour[];
  /** Item is the same as an order is priced by, its cut-outs among it. */
  item: Item;
  posts: AskedPlace[];
  bar: MM;
  /** Stamp is the back stamp in words; empty for none. */
  stamp: string;
  spots: AskedSpot[];
}

/** InquiryAsk asks for the message to a maker. */
export interface InquiryAsk {
  asked: Asked[];
  plan: PapersPlan;
  /** Files is what goes with it, a name each. */
  files: string[];
}

/** Inquiry is a message to a maker, ready to paste into a mail or a form. */
export interface Inquiry {
  subject: string;
  body: string;
  /** Gaps are the places that only the person can fill, as they stand in Body. */
  gaps: string[];
}

/** Difference is one place in which a proof differs from what was asked, in words; Number is what it is called on the marked picture. */
export interface Difference {
  number: number;
  /** "the line between sky and lamp" */
  what: string;
  /** "upper left, 4 mm from the left"; may be empty */
  where: string;
  asked: string;
  /** what the proof has; may be empty */
  shown: string;
  /** the person's own; may be empty */
  note: string;
}

/** ChangesOf is what a change request is made from. */
export interface ChangesOf {
  /** of the pin */
  name: string;
  round: number;
  /** the proof's day, in words; empty when not known */
  dated: string;
  all: Difference[];
  note: string;
  /** Files is what goes with it, a name each. */
  files: string[];
}

/** ChangesAsk asks for the request to change a proof. */
export interface ChangesAsk {
  changes: ChangesOf;
}

/** ListKind is one of the lists. */
export type ListKind = "colours" | "spots" | "quote" | "left";

/** ListAsk asks for a list as CSV; the answer comes with its bytes. */
export interface ListAsk {
  kind: ListKind;
  /** of the order, for the file's name */
  name: string;
  units: Units;
  /** of colours and trouble spots */
  asked?: Asked[];
  /** Quote, its order and its maker, of the quote. */
  quote?: Quote;
  order?: Wanted;
  maker?: string;
  /** Selling is the plan of what is left. */
  selling?: Selling;
}

/** CardAsk asks how a card comes out; without one, how the tool would begin it. */
export interface CardAsk {
  of: string;
  card?: BackingCard;
}

/** CardPlace is a place in mm. */
export interface CardPlace {
  x: MM;
  y: MM;
}

/** CardHole is a round hole in the card. */
export interface CardHole {
  x: MM;
  y: MM;
  across: MM;
  /** what the post is called as seen from behind */
  no: number;
}

/** CardSet is a line of words in its place. */
export interface CardSet {
  /** left end of its base line */
  x: MM;
  y: MM;
  /** from X, Y on */
  d: string;
  /** x0, y0, x1, y1 */
  box: [MM, MM, MM, MM];
}

/** CardWarning is what would spoil on a card, and where. */
export interface CardWarning {
  /** Note says that it can be printed so all the same. */
  note: boolean;
  what: string;
  box: [MM, MM, MM, MM];
}

/** LaidCard is a card as it is to be printed, cut and pierced. */
export interface LaidCard {
  w: MM;
  h: MM;
  bleed: MM;
  safe: MM;
  /** Pin is the upper left of the silhouette, PinW and PinH its sides, Outline its borders from there on. */
  pin: CardPlace;
  pinW: MM;
  pinH: MM;
  outline: string;
  holes: CardHole[];
  hang?: CardHang;
  texts: CardSet[];
  /** Warnings are what would spoil, the worst first. */
  warnings: CardWarning[];
  says: string;
}

/** Imposed is cards on one sheet: the upper left of each cut card, and the marks of the cuts, x1, y1, x2, y2 each. */
export interface Imposed {
  w: MM;
  h: MM;
  places: CardPlace[];
  marks: [MM, MM, MM, MM][];
  gutter: MM;
  says: string;
}

/** CardSize is a kind with its sides as it lies. */
export interface CardSize {
  kind: CardKind;
  name: string;
  w: MM;
  h: MM;
}

/** CardUsual is the usual measures of a card, mm. */
export interface CardUsual {
  hole: number;
  bleed: number;
  safe: number;
  /** of a bank card */
  corner: number;
}

/** CardLaid is a card laid out for a pin. */
export interface CardLaid {
  /** without its picture's data */
  card: BackingCard;
  laid: LaidCard;
  sheet: Imposed;
  kinds: CardSize[];
  usual: CardUsual;
}

/** CardFileAsk asks for the card as a file. */
export interface CardFileAsk {
  of: string;
  card: BackingCard;
  /** else SVG */
  pdf: boolean;
  /** ISO 8601, where the person is */
  today: string;
}

/** CardPictureAsk comes with the pixels of a picture (RGBA, straight alpha, 4*W*H bytes); the answer's bytes are the file that a card keeps. */
export interface CardPictureAsk {
  w: number;
  h: number;
}

/** CardPicture is a picture for a card. */
export interface CardPicture {
  type: string;
  w: number;
  h: number;
}

/** ShopPictureAsk comes with the pixels of a pin (RGBA, straight alpha, 4*W*H bytes); the answer comes with a PNG. */
export interface ShopPictureAsk {
  w: number;
  h: number;
  /** of the pin and its version, for the file's name */
  name: string;
  /** Ground is what it lies on; absent for nothing. */
  ground?: ShopGround;
}

/** ShapesAsk asks for the clean curves of a version that was handed over; the answer comes with an SVG file of them. */
export interface ShapesAsk {
  of: string;
}

/** Shape is everything of one kind: the d of an SVG path, to be filled by the even-odd rule. */
export interface Shape {
  flat: FlatID;
  role: Role;
  name: string;
  rgb: RGB8;
  d: string;
  /** Pieces is how many closed areas it has, and Area how large they are, mm2. */
  pieces: number;
  area: number;
}

/** Shapes is a version as smooth closed curves, in mm from the upper left of its silhouette, y down. Neighbours share their borders exactly. */
export interface Shapes {
  w: MM;
  h: MM;
  /** Outline is all that is pin; the others lie in it. A hole of it is a cut-out. */
  outline: Shape;
  metal: Shape;
  cutOuts: Shape;
  enamel: Shape[];
  /** on top of the others */
  printed: Shape[];
  /** Tolerance was held to where the drawing is fine enough; nowhere is a curve further than Within from the edge as the drawing has it. */
  tolerance: MM;
  within: MM;
  lines: number;
  curves: number;
  corners: number;
  fileName: string;
  /** what the file is, for the person */
  words: string;
}

/** FilePicture is a file as it was brought. */
export interface FilePicture {
  name: string;
  /** bytes */
  size: number;
}

/** FileDrawing is a drawing that a project speaks of. */
export interface FileDrawing {
  id: string;
  /** Files is one picture, or two that are its lines and its colours. */
  files: FilePicture[];
}

/** FilePhoto is a picture that a project names: of a flawed piece, or a maker's proof. */
export interface FilePhoto {
  id: string;
  /** bytes */
  size: number;
  /** media type; of what is opened, as its own first bytes tell it */
  type: string;
}

/** SaveFileAsk asks for a project as one file. With it come the bytes of its drawings as they were brought and of its pictures, in the order in which they are listed, then those of the thumbnail. */
export interface SaveFileAsk {
  project: Project;
  drawings: FileDrawing[];
  pictures?: FilePhoto[];
  /** bytes of the thumbnail, a PNG of up to 512 px; 0 for none */
  thumb: number;
}

/** SavedFile names the file whose bytes come with it. */
export interface SavedFile {
  fileName: string;
}

/** OpenFileAsk comes with the bytes of a project file. */
export type OpenFileAsk = Record<string, never>;

/** OpenedFile is what a project file holds. With it come the bytes of its drawings and its pictures, in the order in which they are listed, then those of the thumbnail. */
export interface OpenedFile {
  project: Project;
  drawings: FileDrawing[];
  pictures?: FilePhoto[];
  /** bytes; 0 for none */
  thumb: number;
  /** what is to be told of it, a sentence each */
  notes: string[];
}

/** ForwardAsk comes with a project value of an older format, as JSON. */
export type ForwardAsk = Record<string, never>;

/** Forwarded is the same project in the format of today. */
export interface Forwarded {
  project: Project;
}

/** ProofOpenAsk opens a proof's picture: W*H RGBA pixels come along as bytes. */
export interface ProofOpenAsk {
  /** key of a version that was handed over */
  of: string;
  w: number;
  h: number;
  how: ProofHow;
}

/** Candidate is something in the picture that may be the pin: its box in px, x0, y0, x1, y1, and how badly the pin suits it, 0 perfectly. */
export interface Candidate {
  box: [number, number, number, number];
  off: number;
}

/** ProofLaid is a pin as laid on a proof. */
export interface ProofLaid {
  /** names the picture in further questions */
  proof: string;
  w: number;
  h: number;
  /** Spots are what may be the pin, and Chosen the one it was laid on, counted from 1; 0 when it was laid by hand. */
  spots: Candidate[];
  chosen: number;
  fit: Fit;
  /** Outline is the pin's outline on the picture, px: loops, x and y in turn. */
  outline: number[][];
  /** Corners are three places of the pin, working px, that lie far apart on its outline, and where they lie in the picture: to be dragged. There are four of a pin that may lie in perspective. */
  corners: Point[];
  pictureCorners: Point[];
}

/** ProofFitAsk lays the pin otherwise on a proof that is open. */
export interface ProofFitAsk {
  of: string;
  proof: string;
  how: ProofHow;
}

/** ProofDiffAsk asks in what a proof differs from what was asked for. */
export interface ProofDiffAsk {
  of: string;
  proof: string;
  said: Said;
  /** absent for the usual */
  tolerances?: Tolerances;
  /** Photo says that it is a photograph of a finished pin, and White is a place of white card in it, px; absent where none is in view. */
  photo?: boolean;
  white?: Point;
}

/** ColourShown is a flat as asked for and as shown. */
export interface ColourShown {
  flat: FlatID;
  name: string;
  asked: RGB8;
  shown: RGB8;
  deltaE: number;
  /** false where its areas are too small in the picture */
  seen: boolean;
}

/** HeldAgainst is everything in which a picture differs from what was asked for. */
export interface HeldAgainst {
  fit: Fit;
  tolerances: Tolerances;
  differences: Deviation[];
  /** Colours shows each flat beside what is shown of it, differing or not. */
  colours: ColourShown[];
  /** as shown */
  metal: RGB8;
  /** Back says that a view from behind was found in the picture. */
  back: boolean;
  /** Notes say what could not be looked at, and why. */
  notes: string[];
  words: string;
}

/** ProofView is one of two pictures to be held over each other. */
export type ProofView = "shown" | "asked";

/** ProofLookAsk asks for one of them; its pixels come as bytes. Both lie like a struck picture of the same long side. */
export interface ProofLookAsk {
  of: string;
  proof: string;
  view: ProofView;
  longSide: number;
}

/** ProofMarksAsk asks for the proof's picture with marks drawn on it, as PNG. */
export interface ProofMarksAsk {
  of: string;
  proof: string;
  differences: Deviation[];
  /** of the design, for the file's name */
  name: string;
}

/** ProofPairsAsk holds two lists of differences of one version against each other: what was asked of one round and what the next shows, or two makers' proofs. */
export interface ProofPairsAsk {
  of: string;
  /** two makers' proofs, not two rounds */
  makers: boolean;
  first: Deviation[];
  other: Deviation[];
}

/** PairState is what became of a difference. */
export type PairState = "done" | "open" | "new" | "both" | "first" | "other";

/** DeviationPair is a difference in two pictures: of two rounds, or of two makers. One of the two may be absent. */
export interface DeviationPair {
  state: PairState;
  first?: Deviation;
  other?: Deviation;
  words: string;
}

/** ProofPairs are the differences of both, those of one place together. */
export interface ProofPairs {
  pairs: DeviationPair[];
  words: string;
}

/** FailureKind says why a call gave no answer. */
export type FailureKind = "refused" | "stopped" | "crashed" | "gone";

/** Failure is an error in words. */
export interface Failure {
  /** what happened and where */
  what: string;
  /** what to do about it */
  do: string;
  kind: FailureKind;
}

/** Every call: what it asks with and what it is answered with. */
export interface Calls {
  hello: { ask: HelloAsk; answer: Hello };
  header: { ask: HeaderAsk; answer: Header };
  open: { ask: OpenAsk; answer: Opened };
  ground: { ask: GroundAsk; answer: Opened };
  revise: { ask: ReviseAsk; answer: Revised };
  thumbnail: { ask: ThumbnailAsk; answer: Thumbnail };
  flats: { ask: FlatsAsk; answer: Flats };
  buys: { ask: BuysAsk; answer: Buys };
  codes: { ask: CodesAsk; answer: Codes };
  check: { ask: CheckAsk; answer: Check };
  quote: { ask: QuoteAsk; answer: Quote };
  choices: { ask: ChoicesAsk; answer: Choices };
  orderitems: { ask: OrderItemsAsk; answer: OrderItems };
  picture: { ask: PictureAsk; answer: Picture };
  look: { ask: LookAsk; answer: Picture };
  reading: { ask: ReadingAsk; answer: ReadingAnswer };
  neighbours: { ask: NeighboursAsk; answer: Neighbours };
  glance: { ask: GlanceAsk; answer: Glance };
  touch: { ask: TouchAsk; answer: Touch };
  offers: { ask: OffersAsk; answer: Offers };
  mendall: { ask: MendAllAsk; answer: MendAll };
  mendedfrom: { ask: MendedFromAsk; answer: MendedFrom };
  marks: { ask: MarksAsk; answer: PNGFile };
  sizes: { ask: SizesAsk; answer: Sizes };
  hang: { ask: HangAsk; answer: Hung };
  parts: { ask: PartsAsk; answer: PartsChosen };
  eyes: { ask: EyesAsk; answer: HeldParts };
  screen: { ask: ScreenAsk; answer: TrueSize };
  typed: { ask: TypedAsk; answer: Typed };
  struck: { ask: StruckAsk; answer: Struck };
  canvas: { ask: CanvasAsk; answer: Canvas };
  guide: { ask: GuideAsk; answer: PNGFile };
  colourlist: { ask: ColourListAsk; answer: ColourListRead };
  orderquote: { ask: OrderQuoteAsk; answer: Quote };
  makers: { ask: MakersAsk; answer: Comparison };
  listcheck: { ask: ListCheckAsk; answer: ListCheck };
  newlist: { ask: NewListAsk; answer: NewList };
  pricefile: { ask: PriceFileAsk; answer: PriceFileRead };
  pricefilewrite: { ask: PriceFileWriteAsk; answer: PriceFileWritten };
  fromquotes: { ask: FromQuotesAsk; answer: Deduction };
  left: { ask: LeftAsk; answer: Left };
  demand: { ask: DemandAsk; answer: Demand };
  presale: { ask: PresaleAsk; answer: Presale };
  orderusual: { ask: OrderUsualAsk; answer: OrderUsual };
  days: { ask: DaysAsk; answer: Days };
  promise: { ask: PromiseAsk; answer: Promise };
  ics: { ask: CalendarFileAsk; answer: CalendarFile };
  backmark: { ask: BackMarkAsk; answer: BackMark };
  parcel: { ask: ParcelAsk; answer: ParcelCounted };
  lookedat: { ask: LookedAtAsk; answer: LookedAt };
  plan: { ask: PlanAsk; answer: Planned };
  ledger: { ask: LedgerAsk; answer: Ledger };
  claim: { ask: ClaimAsk; answer: ClaimWritten };
  font: { ask: FontAsk; answer: Font };
  specsheet: { ask: SpecSheetAsk; answer: PaperFile };
  layers: { ask: LayersAsk; answer: PaperFile };
  hand: { ask: Struck; answer: Hand };
  asked: { ask: AskedAsk; answer: Asked };
  inquiry: { ask: InquiryAsk; answer: Inquiry };
  changes: { ask: ChangesAsk; answer: Inquiry };
  list: { ask: ListAsk; answer: PaperFile };
  card: { ask: CardAsk; answer: CardLaid };
  cardfile: { ask: CardFileAsk; answer: PaperFile };
  cardpicture: { ask: CardPictureAsk; answer: CardPicture };
  shoppicture: { ask: ShopPictureAsk; answer: PNGFile };
  shapes: { ask: ShapesAsk; answer: Shapes };
  savefile: { ask: SaveFileAsk; answer: SavedFile };
  openfile: { ask: OpenFileAsk; answer: OpenedFile };
  forward: { ask: ForwardAsk; answer: Forwarded };
  proofopen: { ask: ProofOpenAsk; answer: ProofLaid };
  prooffit: { ask: ProofFitAsk; answer: ProofLaid };
  proofdiff: { ask: ProofDiffAsk; answer: HeldAgainst };
  prooflook: { ask: ProofLookAsk; answer: Picture };
  proofmarks: { ask: ProofMarksAsk; answer: PNGFile };
  proofpairs: { ask: ProofPairsAsk; answer: ProofPairs };
}

/** The calls that the order's program answers; the pin's answers all others. */
export const ORDER_CALLS: readonly (keyof Calls)[] = ['canvas', 'guide', 'colourlist', 'orderquote', 'makers', 'listcheck', 'newlist', 'pricefile', 'pricefilewrite', 'fromquotes', 'left', 'demand', 'presale', 'orderusual', 'days', 'promise', 'ics', 'backmark', 'parcel', 'lookedat', 'plan', 'ledger', 'claim', 'font', 'specsheet', 'layers', 'hand', 'asked', 'inquiry', 'changes', 'list', 'card', 'cardfile', 'cardpicture', 'shoppicture', 'shapes', 'savefile', 'openfile', 'forward', 'proofopen', 'prooffit', 'proofdiff', 'prooflook', 'proofmarks', 'proofpairs'];

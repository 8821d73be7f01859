/**
 * The two published families of chart symbols. The drawings here are this tool's own; what differs follows the families:
 *
 * | stitch | `us` | `jis` | source |
 * | --- | --- | --- | --- |
 * | single crochet | upright cross | slanted cross | US sheets print both, JIS the slanted one; published chart guides, a Japanese free-pattern publisher |
 * | single crochet together | a crossed leg a base, joined at the top | plain legs under a short bar | common practice, from memory |
 * | back loop only | arc under the symbol | ridge: a bar under the symbol | common practice, from memory |
 * | round the post | small hook at the foot | long hook at the foot | JIS tells front and back by the hook's side: from memory |
 * | slip stitch | filled dot | filled oval | published chart guides: filled oval or dot |
 * | magic ring | open circle | わ in the middle | a published translation of Japanese patterns |
 *
 * Reverse single crochet is its cross under a curved line, twisted single crochet its cross under a small circle, in both (published
 * chart guides). Extended stitches have the oval of their chain at the foot: the tool's own drawing, for want of a sheet that could be read.
 * Chains, half doubles and taller stitches, bunches, picots and shells are alike in both, and so is the rule of feet: joined into one
 * stitch, apart round a chain (published explanation of JIS L 0201).
 */
export type SymbolSet = 'us' | 'jis';

export const SYMBOL_SETS = ['us', 'jis'] as const satisfies readonly SymbolSet[];

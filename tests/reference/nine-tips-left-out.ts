/*
 * Each of the nine tips of nine-tips.ts left out in turn, without error, by generalised least squares with rate and mean (and
 * slope) fitted to the rest, in R 4.2.2: predicted value and t interval (Garland and Ives 2000, American Naturalist 155:
 * 346–364). G is missing throughout, and in the second list C too.
 */
export const leftOutReference = {
  withoutG: [
    { taxon: 'A', predicted: 2.8287487814841827, low: 2.1032206464351115, high: 3.554276916533254 },
    { taxon: 'B', predicted: 2.8973155357225937, low: 2.2666463152804526, high: 3.527984756164735 },
    { taxon: 'C', predicted: 2.9416265618825936, low: 2.4412281564379743, high: 3.442024967327213 },
    { taxon: 'D', predicted: 2.707140992044774, low: 2.0914649705326247, high: 3.3228170135569237 },
    { taxon: 'E', predicted: 2.7263143563638668, low: 1.8220944427149952, high: 3.6305342700127383 },
    { taxon: 'F', predicted: 2.3259644456911137, low: 1.5412230153524957, high: 3.1107058760297317 },
    { taxon: 'H', predicted: 2.616259019183289, low: 1.7415523091962897, high: 3.4909657291702887 },
    { taxon: 'J', predicted: 2.442394831436876, low: 1.7830085414762689, high: 3.101781121397483 },
  ],
  withoutGAndC: [
    { taxon: 'A', predicted: 2.8005439138111936, low: 1.9001495139647837, high: 3.7009383136576037 },
    { taxon: 'B', predicted: 2.834796329381951, low: 1.8943845700455428, high: 3.775208088718359 },
    { taxon: 'D', predicted: 2.7266859294344545, low: 1.9963259055294171, high: 3.4570459533394917 },
    { taxon: 'E', predicted: 2.7271664901865336, low: 1.688507586081479, high: 3.7658253942915882 },
    { taxon: 'F', predicted: 2.3270945326448875, low: 1.4258198255332717, high: 3.2283692397565034 },
    { taxon: 'H', predicted: 2.6169535241375703, low: 1.6122525485265011, high: 3.6216544997486393 },
    { taxon: 'J', predicted: 2.4437236332531214, low: 1.6877318083694801, high: 3.1997154581367626 },
  ],
  trendWithoutG: [
    { taxon: 'A', predicted: 3.1002032757977345, low: 2.797682643017865, high: 3.4027239085776038 },
    { taxon: 'B', predicted: 3.1272218124447693, low: 2.892930187126267, high: 3.3615134377632714 },
    { taxon: 'C', predicted: 2.8660640701860873, low: 2.6900531123318494, high: 3.0420750280403253 },
    { taxon: 'D', predicted: 2.4787227203639066, low: 2.28159251330154, high: 2.6758529274262735 },
    { taxon: 'E', predicted: 2.917975972883516, low: 2.645433388661029, high: 3.1905185571060035 },
    { taxon: 'F', predicted: 2.243670115726012, low: 1.9584057833910746, high: 2.5289344480609497 },
    { taxon: 'H', predicted: 2.8997383024095935, low: 2.550546093365682, high: 3.248930511453505 },
    { taxon: 'J', predicted: 2.1281271161206, low: 1.836982774522383, high: 2.419271457718817 },
  ],
} as const;

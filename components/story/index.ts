import Age from './Age.astro';
import Aside from './Aside.astro';
import Count from './Count.astro';
import Level from './Level.astro';
import Name from './Name.astro';
import Plain from './Plain.astro';
import Sampled from './Sampled.astro';
import SizeOf from './SizeOf.astro';
import Step from './Step.astro';
import Term from './Term.astro';
import Trend from './Trend.astro';
import Value from './Value.astro';

/** The closed list of components that a story may use; pages hand it to the MDX, so stories import nothing. */
export const storyComponents = {
  Age,
  Aside,
  Count,
  Level,
  Name,
  Plain,
  Sampled,
  SizeOf,
  Step,
  Term,
  Trend,
  Value,
};

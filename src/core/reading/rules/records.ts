/** Rules about the yard, species, cultivars, places, guides, videos and their text. */

import type { Rule } from './rule.ts';

export const recordRules = {
  'cultivar-species': {
    level: 'error',
    title: 'A cultivar is of a species that has a file.',
    help: 'The value is the name of a file in content/species without its ending.',
  },
  'cultivar-flavor': {
    level: 'error',
    title: 'A flavor class is one that yard.yaml defines.',
    help: "Flavor classes are the yard's own: they are listed under flavor_classes in content/yard.yaml, and cultivars use their ids.",
  },
  'cultivar-trial': {
    level: 'error',
    title: 'A trial ends in the year it begins or later.',
    help: 'The first year of a trial is written as from, the last as to.',
  },
  'cultivar-trial-place': {
    level: 'error',
    title: 'A trial names a place that has a file.',
    help: 'place: in a trial is the reference place whose climate is most like that of the trial. By it the trial counts in other places as far as their climates are alike. Leave it out where no place is like it.',
  },
  'cultivar-trial-crop': {
    level: 'error',
    title: 'A trial speaks of a crop the cultivar bears.',
    help: 'crop: in a trial is breba or main, and main where it is left out. A cultivar that bears only brebas needs crop: breba in its trials.',
  },
  'name-twice': {
    level: 'warning',
    title: 'Two cultivars of a species do not share a name.',
    help: 'Buyers could not tell them apart in lists. If they are one and the same, keep one file; if not, add what sets them apart to the name.',
  },
  'species-heat-need': {
    level: 'error',
    title: 'A species says when the fruit of every ripening class its cultivars use is ripe.',
    help: 'Without a figure for the class nobody can say whether and when the fruit ripens in a place. Add the class in the species file: under heat: need: main for fruit timed by heat, under bloom: to_ripe for fruit timed by its bloom.',
  },
  'species-breba-need': {
    level: 'warning',
    title: 'A species has the heat need of the breba crop its cultivars bear.',
    help: 'Without it the ripening of the breba crop is left open on every page. Add the class under heat: need: breba in the species file.',
  },
  'cultivar-ripe-seen-place': {
    level: 'error',
    title: 'Dates of ripe fruit name a place that there is.',
    help: 'The dates say something about other places only through the climate of the place they were seen at. Name a file in content/places.',
  },
  'cultivar-ripe-seen-class': {
    level: 'warning',
    title: 'Dates of ripe fruit lie within two months of what the ripening class gives at that place.',
    help: 'The dates take the place of the figure of the class, so a slip in them moves every date of the cultivar. Look the dates, the place and the class up again.',
  },
  'species-bloom': {
    level: 'warning',
    title: 'A species whose fruit is timed by its bloom says when it blooms and how long its fruit takes.',
    help: 'A species file gives either heat: need (figs, mulberries) or bloom, with the heat to full bloom, the days from bloom to the first ripe fruit of each ripening class, and the least heat between them. Until then stand-ins of ours are used, and pages say so.',
  },
  'figure-order': {
    level: 'error',
    title: 'A range is written from low to high.',
    help: 'Of the two numbers in [low, high] the first is the smaller. Mind the minus sign: -15 is less than -12.',
  },
  'figure-range': {
    level: 'error',
    title: 'A figure is within what its unit allows.',
    help: 'The bounds are wide. A number beyond them is a slip of the keyboard, or the unit is another: C or F, share or %.',
  },
  'figure-pair': {
    level: 'error',
    title: 'Figures of one species agree with one another.',
    help: 'Development starts at a lower temperature than it stops rising at; a young tree is not hardier than an established one; roots are hurt before they die; a late class needs more heat than an early one.',
  },
  'yard-home': {
    level: 'error',
    title: 'The home of the yard is a place that has a file.',
    help: 'The value is the name of a file in content/places without its ending. Its climate decides when lots get ready.',
  },
  'yard-time-zone': {
    level: 'error',
    title: 'The time zone is an IANA name.',
    help: 'The zone decides which day it is in the yard when the site is built. It is written as region and city, such as America/Chicago.',
  },
  'yard-currency': {
    level: 'error',
    title: 'The currency is in use.',
    help: 'Currencies are written as the three letters of ISO 4217, such as USD, CAD, EUR or GBP.',
  },
  'yard-rounding': {
    level: 'error',
    title: 'Lines of the rounding rise, and the last one has no upper end.',
    help: 'Prices are rounded by the first line whose "below" is greater than the price; the last line leaves "below" out and takes the rest.',
  },
  'delivery-rule': {
    level: 'error',
    title: 'Delivery prices go by a parcel rule that exists.',
    help: 'billed_by: under delivery: names a row of parcel_rules. By that row a parcel is weighed, and by that weight its price is found.',
  },
  'delivery-areas': {
    level: 'error',
    title: 'Areas of delivery do not meet, and their weights rise.',
    help: 'Each region stands in one area. An area without regions is for everywhere else you send to, and stands last. Within an area prices go from light parcels to heavy ones; heavier parcels than the last line are asked for.',
  },
  'delivery-region': {
    level: 'warning',
    title: 'Regions of delivery are spelled as they are known.',
    help: 'A region is a state or province by its full name, as places name it, or the two letters of a country. One that is spelled another way is found by nobody, and its customers are asked the price of everywhere else.',
  },
  'sending-limits': {
    level: 'error',
    title: 'Limits of sending run from cold to hot and agree with one another.',
    help: 'The cold limit of a form is below its heat limit. A lined carton stands as much cold as a plain one or more. Leaves and bare roots stand no more cold than a dormant tree in its pot. What is left out under sending: limits: is filled with careful figures of ours.',
  },
  'sending-by-hand': {
    level: 'error',
    title: 'Weeks opened or closed by hand run forward, and none is both.',
    help: 'Each span under sending: by_hand: has a first and a last day, open or closed, and a reason customers read. Spans of the same form that say different things do not share a day.',
  },
  'sending-way': {
    level: 'warning',
    title: 'Parcels are not longer on their way than the forms on sale may be.',
    help: 'A tree in leaf travels three days at most, bare roots five (seven in a lined carton), a dormant pot seven: our working figures. A form that would be longer on its way is shown as not sent.',
  },
  'price-base': {
    level: 'error',
    title: 'Every species that has lots has a base price.',
    help: 'Prices climb the ladder from the base price of the species. Add a line under prices: base: in yard.yaml.',
  },
  'price-species': {
    level: 'error',
    title: 'Base prices are for species that have a file.',
    help: 'The keys under prices: base: are names of files in content/species without their ending.',
  },
  'price-rung': {
    level: 'warning',
    title: 'A base price stands on a rung of the price ladder.',
    help: 'Prices climb a ladder of preferred numbers (ISO 3), so a base price between two rungs counts as the nearer one: 28 is sold as 25 or 31.5. Write the rung you mean. A single lot may have any price of its own.',
  },
  'smallest-missing': {
    level: 'warning',
    title: 'Every pot size in use has a smallest plant that is sold in it.',
    help: 'Without it, trees of any size in that pot pass as large enough. Add the container class to smallest in yard.yaml, with a least height or stem thickness.',
  },
  'costs-container': {
    level: 'warning',
    title: 'Every pot size in use has its costs.',
    help: 'Without them no cost floor can be kept for lots in that pot. Add the container class to area_sqft and pot under costs in yard.yaml.',
  },
  'costs-missing': {
    level: 'info',
    title: 'Costs are known, so that no tree is sold below them.',
    help: 'Prices climb the ladder from the base price; with costs they are also held above what a tree costs you. Where the private folder is not at hand, as on the host that publishes, there are none. A lot whose price rests on them is told by npm run check on your own machine: give it a price of its own, and it is the same everywhere.',
  },
  'private-in-public': {
    level: 'info',
    title: 'A public repository shows what is private in its files.',
    help: 'The site never shows costs, requests and private notes. The repository does, to everyone who can see it, and so does every version it keeps. Keep it private, or move these keys to the private folder: content/private/yard.yaml for costs, content/private/cultivars/ID.yaml for requests, content/private/lots/NAME.yaml for notes about lots, content/private/walks/DAY.csv for those of a walk. What was once committed stays in the history.',
  },
  'private-twice': {
    level: 'error',
    title: 'A private key stands in the public files or in the private folder, not in both.',
    help: 'When it is in both places nobody can say which is meant, and the one in the public file is still there to be read. Take one out.',
  },
  'private-unknown': {
    level: 'error',
    title: 'What the private folder speaks of is there.',
    help: 'A file in private/cultivars is named after a file in content/cultivars, and every lot in private/lots, sales.csv and reservations.csv is one of content/lots.',
  },
  'private-price': {
    level: 'warning',
    title: 'A price does not hang on the private folder.',
    help: 'Costs and requests that stand in the private folder are not there on a host that builds the site from the repository, so the lot would have another price there. Give it a price of its own in its list of lots, and it is the same everywhere.',
  },
  'carton-size': {
    level: 'error',
    title: 'A carton is larger outside than inside.',
    help: 'One of the measures is wrong, or the two lines are swapped.',
  },
  'place-months': {
    level: 'error',
    title: 'A place has twelve monthly figures of both minimum and maximum, or a daily record.',
    help: 'Give tmax and tmin (in C or F), or name a daily record under daily, but not both.',
  },
  'place-unit': {
    level: 'error',
    title: 'Monthly temperatures are in the unit their key names.',
    help: 'The figures would make a place hotter or colder than any known one, but are plausible in the other unit. Rename the keys, or look the figures up again.',
  },
  'place-crossed': {
    level: 'error',
    title: 'A mean minimum is not above the mean maximum of the same month.',
    help: 'The two lists may be swapped or shifted, or a number slipped.',
  },
  'place-position': {
    level: 'error',
    title: 'A place lies in its country and has its summer in the right half of the year.',
    help: 'South and west are negative, and latitude is never more than 90. The position is compared with rough boxes around the country, and the warm months with the latitude.',
  },
  'place-freeze-order': {
    level: 'error',
    title: 'Freeze dates run from early to late.',
    help: 'p10 is the early date, p90 the late one, whether first or last freeze. Agencies that count the last freeze by the chance of a later one print them the other way round.',
  },
  'place-daily': {
    level: 'error',
    title: 'The daily record a place names is there.',
    help: 'The value of daily is the name of a CSV file in content/places.',
  },
  'daily-record': {
    level: 'error',
    title: 'A daily record can be read and covers the year.',
    help: "It needs a date and the minimum and maximum of each day, with the unit in the column's name, such as tmin_c. Every month of the year must have enough days.",
  },
  'daily-gaps': {
    level: 'warning',
    title: 'Days of a daily record that cannot be right are left out.',
    help: 'The rest of the record is used. If many days are named, look at the file. Months with under 20 days and seasons with more than 10 days missing are left out as well.',
  },
  'daily-short': {
    level: 'warning',
    title: 'A daily record has at least ten whole years.',
    help: 'The means of fewer years may lie far from the climate, so no freeze dates or winter zone are taken from them; they are modeled.',
  },
  'place-zone': {
    level: 'warning',
    title: 'The winter zone agrees with the other figures.',
    help: 'A zone spans five degrees F of the mean coldest night of the year (1a from -60 F). It is compared with that mean where it is given, else with the coldest month.',
  },
  'log-crossed': {
    level: 'error',
    title: 'A minimum of the temperature log is not above the maximum of the same day.',
    help: 'The two columns may be swapped, or a number slipped.',
  },
  'day-twice': {
    level: 'error',
    title: 'A temperature log has one line per day.',
    help: 'Keep one of the lines.',
  },
  'guide-species': {
    level: 'error',
    title: 'A guide is for species that have a file.',
    help: 'The values are names of files in content/species without their ending. An empty list means all species.',
  },
  'video-link': {
    level: 'error',
    title: 'A chapter links to something that exists.',
    help: 'A link is cultivar:, lot:, guide: or place: and an id. A lot that is sold may be linked: the page of the video says so and offers the way on.',
  },
  'video-part': {
    level: 'error',
    title: 'A part of a guide that a chapter links to is one of its headings.',
    help: 'The name behind # is the heading in lower-case letters with hyphens between the words: "Before winter" is before-winter. When a heading is reworded its name changes, and links to it with it.',
  },
  'video-part-place': {
    level: 'error',
    title: 'Where a chapter names a place, the guide of that place has the part the chapter links to.',
    help: 'A chapter that links to a part of a guide and to a place leads to the guide of that place. Parts that its calendar or its climate does not ask for are left out there, so the link would open the guide at its top.',
  },
  'video-start': {
    level: 'error',
    title: 'The first chapter starts with the video.',
    help: 'Players take chapters out of the text below a video only when the first stands at 0:00.',
  },
  'video-chapters': {
    level: 'error',
    title: 'Chapters follow one another in time.',
    help: 'Each chapter starts after the one above it.',
  },
  'video-players': {
    level: 'warning',
    title: 'A video has three chapters or more, each of ten seconds or more.',
    help: 'Most players list the chapters of a description only then. The site shows them whatever their number and length.',
  },
  'video-same-day': {
    level: 'warning',
    title: 'Two videos do not share a date.',
    help: 'Videos are listed newest first; those of one day in the order of their file names. It may be right; a date copied from another file is the usual slip.',
  },
  'video-description': {
    level: 'error',
    title: 'The text to paste below a video is not longer than its host takes.',
    help: 'The text is made of the title, the summary, the chapters, the addresses of what they link to and the cautions that are due. The limit is video_description_limit in yard.yaml. Nothing is left out to make it fit, since nobody would notice what.',
  },
  'photo-missing': {
    level: 'error',
    title: 'A photo that is named is in content/photos.',
    help: 'Names must match letter by letter, with capitals and ending.',
  },
  'photo-type': {
    level: 'error',
    title: 'A photo is JPEG, PNG, WebP, AVIF or HEIC.',
    help: 'Other kinds cannot be made smaller for the web here. Export the picture as JPEG.',
  },
  'markdown-html': {
    level: 'error',
    title: 'Text has no HTML tags.',
    help: 'Tags would be published as they are, scripts included. Use Markdown: *emphasis*, **strong**, - lists, [links](https://...).',
  },
  'markdown-link': {
    level: 'error',
    title: 'Links lead to web pages, mail addresses or pages of this site.',
    help: "A link starts with https://, http://, mailto:, / or #, or is a plain relative address. Other kinds could run a script in the reader's browser.",
  },
  'link-nowhere': {
    level: 'error',
    title: 'A link inside the site leads to a page that is there.',
    help: 'Links are written from the root of the site, such as /cultivars/some-name/ or /guides/some-guide/#heading, and work below any path. A page that was renamed may still be linked by its old address, which the address list leads on.',
  },
  'link-part': {
    level: 'error',
    title: 'A link to a part of a page names a part that the page has.',
    help: 'The name behind # is a heading in small letters with hyphens between the words, or t- and the seconds at which a chapter of a video starts. When a heading is reworded its name changes.',
  },
  'markdown-image': {
    level: 'error',
    title: 'Pictures are named in photos, not in the text.',
    help: 'A picture in the text would be published as it is, place data included. Put the file in content/photos and name it under photos in the front matter, with a description.',
  },
  'markdown-depth': {
    level: 'error',
    title: 'Blocks of text are nested a few levels deep at most.',
    help: 'Quotes, lists and blocks inside one another beyond twenty levels are a slip, such as a long line of dashes with spaces, or a table pasted with its indentation.',
  },
  'markdown-directive': {
    level: 'error',
    title: 'Only known directives are used.',
    help: 'A word straight behind a colon, as in :note, is a directive, and one that nobody knows would make its text vanish. Put a space behind the colon, or a backslash before it.',
  },
} as const satisfies Record<string, Rule>;

import { nameKey } from '../../text/normalizedName.ts';
import { isZone } from './wallTime.ts';

/** Large cities whose clocks go by another city's zone (from memory of the IANA time zone database and of maps). */
const cities: Record<string, string> = {
  'America/New_York':
    'Atlanta, Baltimore, Boston, Buffalo, Cambridge Massachusetts, Charlotte, Cincinnati, Cleveland, Columbus, Hartford, Jacksonville, Miami, Orlando, Philadelphia, Pittsburgh, Portland Maine, Providence, Raleigh, Richmond, Tampa, Washington',
  'America/Chicago':
    'Austin, Birmingham Alabama, Dallas, Des Moines, Fort Worth, Houston, Kansas City, Madison, Memphis, Milwaukee, Minneapolis, Nashville, New Orleans, Oklahoma City, Omaha, San Antonio, St Louis, St Paul, Tulsa',
  'America/Denver': 'Albuquerque, Billings, Colorado Springs, Salt Lake City, Santa Fe',
  'America/Phoenix': 'Tucson',
  'America/Los_Angeles':
    'Fresno, Las Vegas, Oakland, Portland Oregon, Reno, Sacramento, San Diego, San Francisco, San Jose California, Seattle, Spokane, Tacoma',
  'America/Toronto': 'Hamilton Ontario, London Ontario, Montreal, Ottawa, Quebec',
  'America/Winnipeg': 'Brandon',
  'America/Regina': 'Saskatoon',
  'America/Edmonton': 'Calgary',
  'America/Vancouver': 'Victoria British Columbia, Kelowna',
  'America/Halifax': 'Charlottetown',
  'America/Mexico_City': 'Guadalajara, Oaxaca, Puebla',
  'America/Sao_Paulo': 'Belo Horizonte, Brasilia, Curitiba, Florianopolis, Porto Alegre, Rio de Janeiro',
  'America/Argentina/Buenos_Aires': 'La Plata, Rosario',
  'America/Bogota': 'Cali, Medellin',
  'America/Guayaquil': 'Quito',
  'America/Santiago': 'Valparaiso',
  'Europe/London':
    'Aberdeen, Bath, Birmingham England, Brighton, Bristol, Cambridge England, Cardiff, Edinburgh, Glasgow, Leeds, Leicester, Liverpool, Manchester, Newcastle upon Tyne, Norwich, Nottingham, Oxford, Portsmouth, Sheffield, Southampton, Stoke-on-Trent, Swansea, York',
  'Europe/Dublin': 'Cork, Galway, Limerick',
  'Europe/Lisbon': 'Braga, Coimbra, Porto',
  'Europe/Madrid': 'Barcelona, Bilbao, Malaga, Seville, Valencia, Zaragoza',
  'Europe/Paris':
    'Bordeaux, Lille, Limoges, Lyon, Marseille, Montpellier, Nantes, Nice, Rennes, Strasbourg, Toulouse',
  'Europe/Brussels': 'Antwerp, Ghent, Liege',
  'Europe/Amsterdam': 'Delft, Eindhoven, Rotterdam, The Hague, Utrecht',
  'Europe/Berlin':
    'Bremen, Cologne, Dortmund, Dresden, Dusseldorf, Essen, Frankfurt, Freiburg, Hamburg, Hannover, Hanover, Koln, Leipzig, Meissen, Munchen, Munich, Nuremberg, Stuttgart',
  'Europe/Vienna': 'Graz, Innsbruck, Linz, Salzburg, Wien',
  'Europe/Zurich': 'Basel, Bern, Geneva, Lausanne, Lucerne',
  'Europe/Rome':
    'Bologna, Faenza, Florence, Genoa, Milan, Milano, Naples, Palermo, Roma, Turin, Venice, Verona',
  'Europe/Prague': 'Brno, Praha',
  'Europe/Warsaw': 'Gdansk, Krakow, Lodz, Poznan, Wroclaw',
  'Europe/Copenhagen': 'Aarhus, Odense',
  'Europe/Stockholm': 'Gothenburg, Malmo, Uppsala',
  'Europe/Oslo': 'Bergen, Trondheim',
  'Europe/Helsinki': 'Espoo, Tampere, Turku',
  'Europe/Athens': 'Patras, Thessaloniki',
  'Europe/Kyiv': 'Kharkiv, Lviv, Odesa',
  'Europe/Bucharest': 'Cluj',
  'Europe/Istanbul': 'Ankara, Izmir',
  'Asia/Jerusalem': 'Haifa, Tel Aviv',
  'Asia/Dubai': 'Abu Dhabi',
  'Asia/Riyadh': 'Jeddah',
  'Asia/Karachi': 'Islamabad, Lahore',
  'Asia/Kolkata':
    'Ahmedabad, Bangalore, Bengaluru, Bombay, Chennai, Delhi, Hyderabad, Jaipur, Mumbai, New Delhi, Pune',
  'Asia/Kathmandu': 'Pokhara',
  'Asia/Yangon': 'Mandalay',
  'Asia/Bangkok': 'Chiang Mai, Hanoi',
  'Asia/Ho_Chi_Minh': 'Ho Chi Minh City, Da Nang',
  'Asia/Jakarta': 'Bandung, Surabaya',
  'Asia/Makassar': 'Bali, Denpasar',
  'Asia/Manila': 'Cebu, Quezon City',
  'Asia/Shanghai':
    'Beijing, Chengdu, Chongqing, Guangzhou, Hangzhou, Jingdezhen, Nanjing, Shenzhen, Tianjin, Wuhan, Xian',
  'Asia/Seoul': 'Busan, Icheon, Incheon',
  'Asia/Tokyo': 'Fukuoka, Hiroshima, Kobe, Kyoto, Nagoya, Osaka, Sapporo, Sendai, Yokohama',
  'Australia/Sydney': 'Canberra, Newcastle New South Wales, Wollongong',
  'Australia/Melbourne': 'Ballarat, Geelong',
  'Australia/Brisbane': 'Cairns, Gold Coast',
  'Pacific/Auckland': 'Christchurch, Dunedin, Hamilton New Zealand, Wellington',
  'Africa/Johannesburg': 'Cape Town, Durban, Pretoria',
  'Africa/Lagos': 'Abuja, Ibadan',
  'Africa/Casablanca': 'Fez, Marrakesh, Rabat, Safi',
  'Africa/Nairobi': 'Mombasa',
  'Africa/Cairo': 'Giza',
};

interface City {
  name: string;
  zone: string;
}

/** `St. John's` is written in several ways. */
const key = (name: string): string => nameKey(name.replace(/^saint\b/i, 'st'));

const zones = Intl.supportedValuesOf('timeZone');

const cityOf = (zone: string): City => ({
  name: zone.slice(zone.lastIndexOf('/') + 1).replaceAll('_', ' '),
  zone,
});

const all: readonly City[] = [
  ...zones.map(cityOf),
  // Node calls some zones by a city's former name.
  ...Object.keys(cities)
    .filter((zone) => !zones.includes(zone))
    .map(cityOf),
  ...Object.entries(cities).flatMap(([zone, names]) => names.split(', ').map((name) => ({ name, zone }))),
];

/** The time zone with that name, in whatever case. */
export const zoneNamed = (typed: string): string | undefined => {
  const name = typed.trim();
  return zones.find((zone) => zone.toLowerCase() === name.toLowerCase()) ?? (isZone(name) ? name : undefined);
};

/** The cities that somebody may mean: the one with that name, or several that begin with it. */
export const citiesNamed = (typed: string): readonly City[] => {
  // What follows a comma is the country, or the state.
  for (const name of [typed, typed.split(',')[0] ?? '']) {
    const exact = all.filter((city) => key(city.name) === key(name));
    if (exact.length > 0) return exact;
  }
  const begun = key(typed);
  return begun.length < 3 ? [] : all.filter((city) => key(city.name).startsWith(begun));
};

/**
 * Physical hazards: H200 to H290.
 * The source, its licence, and how a line reads: see source.ts and statement-table.ts.
 */
export const PHYSICAL_HAZARDS = `
H200|D1|281|(Deleted) Unstable Explosive
H201|D1|280|(Deleted) Explosive; mass explosion hazard
H202|D1|280|(Deleted) Explosive; severe projection hazard
H203|D1|280|(Deleted) Explosive; fire, blast or projection hazard
H204|W1/W7|280|Fire or projection hazard
H205|D2|280|(Deleted) May mass explode in fire
H206|D2|280|Fire, blast or projection hazard; increased risk of explosion if desensitizing agent is reduced
H207|D2/W2|280|Fire or projection hazard; increased risk of explosion if desensitizing agent is reduced
H208|W2|280|Fire hazard; increased risk of explosion if desensitizing agent is reduced
H209|D1|280|Explosive
H210|D1|280|Very sensitive
H211|D1|280|Maybe sensitive
H220|D2|280|Extremely flammable gas
H221|D2/W||Flammable gas
H222|D2||Extremely flammable aerosol
H223|W2||Flammable aerosol
H224|D2|280|Extremely flammable liquid and vapor
H225|D2|280|Highly Flammable liquid and vapor
H226|W2|280|Flammable liquid and vapor
H227|W|280|Combustible liquid
H228|D2/W2|280|Flammable solid
H229|D2/W2/W||Pressurized container: may burst if heated
H230|D2||May react explosively even in the absence of air
H231|D2||May react explosively even in the absence of air at elevated pressure and/or temperature
H232|D2|280|May ignite spontaneously if exposed to air
H240|D1|280|Heating may cause an explosion
H241|D12|280|Heating may cause a fire or explosion
H242|D2/W2|280|Heating may cause a fire
H250|D2|280|Catches fire spontaneously if exposed to air
H251|D2|280|Self-heating; may catch fire
H252|W2|280|Self-heating in large quantities; may catch fire
H260|D2|280|In contact with water releases flammable gases which may ignite spontaneously
H261|D2/W2|280|In contact with water releases flammable gas
H270|D3||May cause or intensify fire; oxidizer
H271|D3|280,283|May cause fire or explosion; strong Oxidizer
H272|D3/W3|280|May intensify fire; oxidizer
H280|W4||Contains gas under pressure; may explode if heated
H281|W4|282|Contains refrigerated gas; may cause cryogenic burns or injury
H282|D24||Extremely flammable chemical under pressure: may explode if heated
H283|W24||Flammable chemical under pressure: may explode if heated
H284|W4||Chemical under pressure: may explode if heated
H290|W5||May be corrosive to metals
`;

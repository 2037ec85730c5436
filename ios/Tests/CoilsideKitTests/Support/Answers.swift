import CoilsideCore
import Foundation

/// What every shell's technician of the tests types and chooses.
struct Answers: Decodable {
    private let typed: [String: String]
    private let chosen: [String: String]

    static func read() throws -> Answers { try JSONDecoder().decode(Answers.self, from: Data(contentsOf: Paths.answers)) }

    /// The text for a field; a text that nobody thought of is 20.
    func text(_ field: String) -> String { typed[field.plain] ?? "20" }

    /// The option for a field, by how its words begin; of an unknown question the first.
    func option(_ field: String, _ options: [ChoiceOption]) -> String {
        let wanted = chosen[field.plain]
        return (options.first { option in wanted.map(option.label.hasPrefix) ?? true } ?? options[0]).value
    }
}

extension String {
    /// The field as the answers name it.
    fileprivate var plain: String { String(map { $0.isLetter || $0.isNumber || $0 == "-" || $0 == "_" ? $0 : "_" }) }
}

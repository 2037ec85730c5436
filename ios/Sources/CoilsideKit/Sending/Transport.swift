import CoilsideCore
import Foundation

/// What came back for a request. Status 0: no answer, and the body says why.
public struct Answer: Sendable, Equatable {
    /// The request.
    public let id: String
    /// HTTP's.
    public let status: UInt16
    /// As they came.
    public let headers: [Header]
    /// No more than a megabyte.
    public let body: Data

    /// Puts them together.
    public init(id: String, status: UInt16, headers: [Header] = [], body: Data = Data()) {
        self.id = id
        self.status = status
        self.headers = headers
        self.body = body
    }

    /// No answer, and why.
    public static func none(_ id: String, _ why: String) -> Answer { Answer(id: id, status: 0, body: Data(why.utf8)) }
}

/// Carries requests to the office. Which, when, and what an answer means is the core's to say.
public protocol Transport: AnyObject, Sendable {
    /// Who hears answers, also those to requests of an earlier process. Called once, before anything is carried.
    func listen(_ heard: @escaping @Sendable (Answer) -> Void)
    /// Carries a request; exactly one answer is heard of it, at the latest when this process has died and another one listens.
    func carry(_ request: Sending)
}

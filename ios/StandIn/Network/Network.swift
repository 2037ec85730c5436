// Stand-in for Apple's Network, for Linux only: see StandIn/UIKit.
import Foundation

public struct NWPath: Equatable, Sendable {
    public enum Status: Sendable { case satisfied, unsatisfied, requiresConnection }
    public let status: Status
    public let isExpensive: Bool
    public let isConstrained: Bool
}
public final class NWPathMonitor: @unchecked Sendable {
    public init() {}
    public var pathUpdateHandler: (@Sendable (NWPath) -> Void)?
    public func start(queue: DispatchQueue) {}
}

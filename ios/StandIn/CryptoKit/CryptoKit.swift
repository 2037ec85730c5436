// Stand-in for Apple's CryptoKit, for Linux only: see StandIn/UIKit.
import Foundation
import Security

public enum P256 {
    public enum Signing {
        public struct PublicKey: Sendable { public var x963Representation: Data { fatalError() } }
        public struct ECDSASignature: Sendable { public var derRepresentation: Data { fatalError() } }
    }
}

public enum SecureEnclave {
    public static var isAvailable: Bool { fatalError() }
    public enum P256 {
        public enum Signing {
            public struct PrivateKey: Sendable {
                public init(compactRepresentable: Bool = true, accessControl: SecAccessControl) throws {}
                public init(dataRepresentation: Data) throws {}
                public var dataRepresentation: Data { fatalError() }
                public var publicKey: CryptoKit.P256.Signing.PublicKey { fatalError() }
                public func signature<D: DataProtocol>(for data: D) throws -> CryptoKit.P256.Signing.ECDSASignature { fatalError() }
            }
        }
    }
}

public struct SHA256Digest: Sequence, Sendable { public func makeIterator() -> Array<UInt8>.Iterator { fatalError() } }
public struct SHA256: Sendable { public static func hash<D: DataProtocol>(data: D) -> SHA256Digest { fatalError() } }

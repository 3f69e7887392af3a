package org.girandole.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.Locale;
import org.bouncycastle.bcpg.ArmoredOutputStream;
import org.bouncycastle.bcpg.HashAlgorithmTags;
import org.bouncycastle.openpgp.PGPException;
import org.bouncycastle.openpgp.PGPPublicKey;
import org.bouncycastle.openpgp.PGPPublicKeyRing;
import org.bouncycastle.openpgp.PGPPublicKeyRingCollection;
import org.bouncycastle.openpgp.PGPSecretKey;
import org.bouncycastle.openpgp.PGPSecretKeyRing;
import org.bouncycastle.openpgp.PGPSecretKeyRingCollection;
import org.bouncycastle.openpgp.PGPSignature;
import org.bouncycastle.openpgp.PGPSignatureGenerator;
import org.bouncycastle.openpgp.PGPSignatureList;
import org.bouncycastle.openpgp.PGPUtil;
import org.bouncycastle.openpgp.bc.BcPGPObjectFactory;
import org.bouncycastle.openpgp.operator.bc.BcKeyFingerprintCalculator;
import org.bouncycastle.openpgp.operator.bc.BcPBESecretKeyDecryptorBuilder;
import org.bouncycastle.openpgp.operator.bc.BcPGPContentSignerBuilder;
import org.bouncycastle.openpgp.operator.bc.BcPGPContentVerifierBuilderProvider;
import org.bouncycastle.openpgp.operator.bc.BcPGPDigestCalculatorProvider;

/** A detached OpenPGP signature (RFC 9580, section 10.4) of a file, with a key that the user has. */
final class DetachedSignature {
    private DetachedSignature() {
    }

    /**
     * Signs bytes.
     *
     * @param secretKeys an exported secret key, armoured or not
     * @param passphrase of the key; empty when it has none
     * @return the signature in armour
     * @throws SignatureException when there is no key to sign with, or the passphrase is another
     */
    static String sign(byte[] content, byte[] secretKeys, char[] passphrase) throws SignatureException {
        try {
            PGPSecretKey key = signingKey(secretKeys);
            PGPSignatureGenerator generator = new PGPSignatureGenerator(
                    new BcPGPContentSignerBuilder(key.getPublicKey().getAlgorithm(), HashAlgorithmTags.SHA512), key.getPublicKey());
            generator.init(PGPSignature.BINARY_DOCUMENT, key.extractPrivateKey(
                    new BcPBESecretKeyDecryptorBuilder(new BcPGPDigestCalculatorProvider()).build(passphrase)));
            generator.update(content);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            try (OutputStream armour = ArmoredOutputStream.builder().clearHeaders().build(bytes)) {
                generator.generate().encode(armour);
            }
            return bytes.toString(StandardCharsets.US_ASCII);
        } catch (IOException | PGPException | RuntimeException e) {
            throw new SignatureException("the key cannot be used: it is no OpenPGP secret key, or it has another passphrase");
        }
    }

    /**
     * Checks a signature.
     *
     * @param publicKeys the exported public key of whoever should have signed, armoured or not
     * @return who signed, by name and fingerprint
     * @throws SignatureException when the signature is not of these bytes, or not by that key
     */
    static String signer(byte[] content, byte[] signature, byte[] publicKeys) throws SignatureException {
        PGPSignature signed = signature(signature);
        PGPPublicKeyRing ring = ring(publicKeys, signed.getKeyID());
        PGPPublicKey key = ring.getPublicKey(signed.getKeyID());
        try {
            signed.init(new BcPGPContentVerifierBuilderProvider(), key);
            signed.update(content);
            if (!signed.verify()) {
                throw new SignatureException("the signature is not one of this release");
            }
        } catch (PGPException | RuntimeException e) {
            throw new SignatureException("the signature cannot be checked with this key");
        }
        if (ring.getPublicKey().hasRevocation() || key.hasRevocation()) {
            throw new SignatureException("the key that signed was revoked");
        }
        Iterator<String> names = ring.getPublicKey().getUserIDs();
        return (names.hasNext() ? names.next() : "a key without a name") + ", key "
                + HexFormat.of().formatHex(ring.getPublicKey().getFingerprint()).toUpperCase(Locale.ROOT);
    }

    private static PGPSecretKey signingKey(byte[] secretKeys) throws IOException, PGPException, SignatureException {
        for (PGPSecretKeyRing ring : new PGPSecretKeyRingCollection(decoded(secretKeys), new BcKeyFingerprintCalculator())) {
            for (PGPSecretKey key : ring) {
                if (key.isSigningKey() && !key.isPrivateKeyEmpty()) {
                    return key;
                }
            }
        }
        throw new SignatureException("the file holds no secret key that can sign");
    }

    private static PGPSignature signature(byte[] bytes) throws SignatureException {
        try {
            if (new BcPGPObjectFactory(decoded(bytes)).nextObject() instanceof PGPSignatureList list && !list.isEmpty()) {
                PGPSignature signature = list.get(0);
                if (signature.getSignatureType() == PGPSignature.BINARY_DOCUMENT) {
                    return signature;
                }
            }
            throw new SignatureException("the file holds no detached OpenPGP signature");
        } catch (IOException | RuntimeException e) {
            throw new SignatureException("the file holds no detached OpenPGP signature");
        }
    }

    private static PGPPublicKeyRing ring(byte[] publicKeys, long id) throws SignatureException {
        try {
            PGPPublicKeyRing ring = new PGPPublicKeyRingCollection(decoded(publicKeys), new BcKeyFingerprintCalculator()).getPublicKeyRing(id);
            if (ring == null) {
                throw new SignatureException("the signature is by another key, " + String.format(Locale.ROOT, "%016X", id));
            }
            return ring;
        } catch (IOException | PGPException | RuntimeException e) {
            throw new SignatureException("the file holds no OpenPGP public key");
        }
    }

    private static InputStream decoded(byte[] bytes) throws IOException {
        return PGPUtil.getDecoderStream(new ByteArrayInputStream(bytes));
    }

    /** A signature that was not made or does not hold; the message says why, without a stop. */
    static final class SignatureException extends Exception {
        private static final long serialVersionUID = 1;

        SignatureException(String message) {
            super(message);
        }
    }
}
